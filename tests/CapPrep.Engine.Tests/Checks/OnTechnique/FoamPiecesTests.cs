using CapPrep.Engine.Checks.OnTechnique.Foam;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using Shouldly;
using Xunit;
using Bar = CapPrep.Engine.Tests.Checks.OnTechnique.FoamDrafts.Bar;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

public sealed class FoamPiecesTests
{
    [Fact]
    public void The_technique_foam_lays_every_column_over_foam()
    {
        var foam = Of(Technique.Foam, FoamTwice);

        foam.IsGuessed.ShouldBeFalse();
        foam.Columns.Select(piece => piece.Block).Distinct().ShouldBe([1, 2]);
        foam.ContainsPoint(0).ShouldBeTrue();
    }

    [Fact]
    public void A_thread_that_is_said_to_sew_flat_is_left_out()
    {
        var foam = Of(Technique.Foam, FoamTwice, new() { Block = 1, Name = "Navy", Foam = false }, new() { Block = 2, Name = "White" });

        foam.All.Select(piece => piece.Block).Distinct().ShouldBe([2]);
        foam.ContainsPoint(0).ShouldBeFalse();
    }

    [Fact]
    public void Flat_columns_before_the_first_dense_one_are_flat_work() =>
        Of(Technique.Foam, FlatThenFoam).All.Select(piece => piece.Block).Distinct().ShouldBe([2]);

    [Fact]
    public void What_comes_before_the_stop_at_which_foam_is_laid_is_flat_work() =>
        Of(Technique.Foam, FoamTwice, new() { Block = 1, Name = "Navy" }, new() { Block = 2, Name = "White", Action = StopAction.LayFoam })
            .All.Select(piece => piece.Block).Distinct().ShouldBe([2]);

    [Theory]
    [InlineData(Technique.PartFoam)]
    [InlineData(null)]
    public void Threads_lay_their_own_columns_over_foam(Technique? technique)
    {
        var foam = Of(technique, FlatThenFoam, new() { Block = 1, Name = "Navy" }, new() { Block = 2, Name = "White", Foam = true });

        foam.IsGuessed.ShouldBeFalse();
        foam.All.Select(piece => piece.Block).Distinct().ShouldBe([2]);
    }

    [Fact]
    public void Part_foam_without_a_marked_thread_says_nothing() => Of(Technique.PartFoam, Bars(0.2, 9)).All.ShouldBeEmpty();

    /// <summary>House: 3 to 12.7 mm wide, at most 0.25 mm from needle point to needle point.</summary>
    [Theory]
    [InlineData(0.16, 9, true)]
    [InlineData(0.24, 9, true)]
    [InlineData(0.27, 9, false)]
    [InlineData(0.20, 3.1, true)]
    [InlineData(0.20, 2.9, false)]
    [InlineData(0.20, 11.9, true)]
    public void Wide_dense_columns_are_taken_for_foam_work(double pitch, double width, bool guessed)
    {
        var foam = Of(null, Bars(pitch, width));

        foam.IsGuessed.ShouldBe(guessed);
        foam.Columns.Any().ShouldBe(guessed);
    }

    [Theory]
    [InlineData(20, true)]
    [InlineData(200, false)]
    public void They_must_be_most_of_the_design(int fillHeight, bool guessed) => Of(null, draft => Bars(0.2, 9)(draft)
        .Trim(new(0, 400)).Sew(Fill.Of(new Box(0, 400, 300, 400 + fillHeight)))).IsGuessed.ShouldBe(guessed);

    [Theory]
    [InlineData(Technique.Applique)]
    [InlineData(Technique.Patch)]
    public void Another_technique_is_taken_at_its_word(Technique technique) => Of(technique, Bars(0.2, 9)).All.ShouldBeEmpty();

    private static Draft FoamTwice(Draft draft) => draft.Sew(new Bar(-15, 0)).ColorStop().Move(new(0, 0)).Sew(new Bar(0, 0));

    private static Draft FlatThenFoam(Draft draft) => draft
        .Sew(Column.Upright(new(-100, 0), 30, 100)).ColorStop().Move(new(0, 0)).Sew(new Bar(0, 0));

    private static Func<Draft, Draft> Bars(double pitch, double width) => draft => draft
        .Sew(new Bar(0, 0) { Pitch = pitch, Width = width }).Trim(new(200, 0)).Sew(new Bar(20, 0) { Pitch = pitch, Width = width });

    private static FoamPieces Of(Technique? technique, Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads)
    {
        var job = FoamDrafts.Said(technique, sew, threads);
        var stitches = StitchSequence.Of(job.Tape, 3);
        return FoamPieces.Of(DesignReader.Read(stitches), stitches, job.Request().Ticket);
    }
}
