using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Ends;

/// <summary>Limits are house, 2 and 5 mm; what lies open is measured to about half a millimeter. Tape units are 0.1 mm.</summary>
public sealed class LooseTravelTests
{
    [Theory]
    [InlineData(20, null)]
    [InlineData(30, Severity.Note)]
    [InlineData(48, Severity.Note)]
    [InlineData(65, Severity.Warn)]
    [InlineData(110, Severity.Warn)]
    public void A_move_over_bare_cloth_passes_one_limit_after_the_other(int way, Severity? expected) => Level(Above(way)).ShouldBe(expected);

    [Fact]
    public void A_single_stitch_from_area_to_area_is_a_move_too() => Level(draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Stitch(new(15, 180)).Sew(Column.Upright(new(0, 190), 30, 100))).ShouldBe(Severity.Warn);

    [Fact]
    public void What_later_stitches_cover_is_not_seen() =>
        Level(draft => Above(80)(draft).ColorStop().Trim(new(-50, 50)).Stitch(new(-50, 50)).Sew(Fill.Of(new(-50, 50, 100, 230)))).ShouldBeNull();

    [Fact]
    public void A_move_over_earlier_cover_is_seen() => Level(draft => Above(80)(
        draft.Sew(Fill.Of(new(-50, -50, 100, 350))).ColorStop().Trim(new(0, 0)).Stitch(new(0, 0)))).ShouldBe(Severity.Warn);

    [Fact]
    public void A_machine_that_trims_at_every_move_leaves_nothing_loose()
    {
        var machine = Job.Clean.Machine;
        var job = RuleCases.Drafted(Above(80)) with { Machine = machine with { Tape = machine.Tape with { TrimCount = 1 } } };

        job.Finding("stitch.loose-travel").ShouldBeNull();
    }

    [Fact]
    public void A_trim_leaves_nothing_loose() => Level(draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Trim(new(0, 180)).Stitch(new(0, 180)).Sew(Column.Upright(new(0, 180), 30, 100))).ShouldBeNull();

    [Fact]
    public void Stitches_of_a_line_are_no_moves() => Level(draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Run(40, new TapePoint(0, 100), new TapePoint(0, 300)).Sew(Column.Upright(new(0, 300), 30, 100))).ShouldBeNull();

    [Fact]
    public void Rows_of_a_fan_are_no_moves() => Level(draft => draft.Stitches(
        Enumerable.Range(0, 40).Select(row => row % 2 == 0 ? new TapePoint(0, row) : new TapePoint(40 - Math.Abs(row - 20), 3 * row)))).ShouldBeNull();

    [Fact]
    public void The_longest_is_told()
    {
        var finding = RuleCases.Drafted(Above(110)).Finding("stitch.loose-travel").ShouldNotBeNull();

        finding.Measured!.Value.ShouldBe(11, 0.6);
        finding.Message.ShouldMatch("^1 thread lies loose from one place to the next, the longest over 1[01](\\.[0-9])? mm\\.$");
        finding.Places.ShouldHaveSingleItem().Stitches!.First.ShouldBe(finding.Places[0].Stitches!.Last - 1);
    }

    /// <summary>A column and, so far above its head, another one, reached by one jump.</summary>
    private static Func<Draft, Draft> Above(int way) => draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Move(new(0, 100 + way)).Stitch(new(0, 100 + way)).Sew(Column.Upright(new(0, 100 + way), 30, 100));

    private static Severity? Level(Func<Draft, Draft> sew) => RuleCases.Drafted(sew).Finding("stitch.loose-travel")?.Severity;
}
