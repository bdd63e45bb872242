using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Layers;

/// <summary>Limits are house; tape units are 0.1 mm.</summary>
public sealed class MissingUnderlayTests
{
    private static readonly Box Area = new(0, 0, 200, 150);

    [Theory]
    [InlineData("six-panel-structured-mid", Severity.Note)]
    [InlineData("six-panel-unstructured-low", Severity.Warn)]
    public void A_bare_fill_is_a_note_on_a_stiff_crown_and_a_warn_on_a_soft_one(string style, Severity expected) =>
        RuleCases.Drafted(draft => draft.Sew(Bare(Area))).On(style).Finding("stitch.no-underlay").ShouldNotBeNull().Severity.ShouldBe(expected);

    [Theory]
    [InlineData(14, null)]
    [InlineData(16, Severity.Note)]
    public void Satin_needs_underlay_from_one_and_a_half_millimeters_on(int width, Severity? expected) =>
        Level(draft => draft.Sew(Column.Upright(new(0, 0), width, 200) with { UnderlayStitch = 0 })).ShouldBe(expected);

    [Theory]
    [InlineData(40, null)]
    [InlineData(55, Severity.Note)]
    public void A_fill_needs_it_from_twenty_five_square_millimeters_on(int side, Severity? expected) =>
        Level(draft => draft.Sew(Bare(new(0, 0, side, side)))).ShouldBe(expected);

    [Fact]
    public void A_center_run_is_underlay() => Level(draft => draft.Sew(Column.Upright(new(0, 0), 20, 200))).ShouldBeNull();

    [Fact]
    public void A_short_piece_of_satin_holds_by_itself() =>
        Level(draft => draft.Sew(Column.Upright(new(0, 0), 20, 60) with { UnderlayStitch = 0 })).ShouldBeNull();

    [Fact]
    public void Lines_of_another_color_under_it_are_underlay() => Level(draft => draft
        .Run(25, new TapePoint(10, 10), new TapePoint(10, 190), new TapePoint(20, 190), new TapePoint(20, 10))
        .ColorStop().Move(new(0, 0)).Sew(Column.Upright(new(0, 0), 30, 200) with { UnderlayStitch = 0 })).ShouldBeNull();

    [Fact]
    public void One_net_under_several_areas_serves_them_all() => Level(draft => draft
        .Run(25, new TapePoint(5, 5), new TapePoint(245, 70), new TapePoint(5, 140), new TapePoint(245, 5), new TapePoint(5, 70), new TapePoint(245, 140))
        .ColorStop().Move(new(0, 0)).Sew(Bare(new(0, 0, 100, 150))).Trim(new(150, 0)).Sew(Bare(new(150, 0, 250, 150)))).ShouldBeNull();

    [Fact]
    public void Earlier_cover_is_underlay() => Level(draft => draft
        .Sew(Fill.Of(Area)).ColorStop().Move(new(20, 20)).Sew(Bare(new(20, 20, 150, 120)))).ShouldBeNull();

    [Fact]
    public void Foam_carries_what_lies_on_it() => (RuleCases.Drafted(draft => draft.Sew(Bare(Area))) with
    {
        Ticket = Job.Clean.Ticket with { Technique = Technique.Foam },
    }).Finding("stitch.no-underlay").ShouldBeNull();

    [Fact]
    public void The_largest_area_is_told() => RuleCases.Drafted(draft => draft.Sew(Bare(Area)).Trim(new(300, 0)).Sew(Bare(new(300, 0, 360, 60))))
        .Finding("stitch.no-underlay").ShouldNotBeNull().Message.ShouldMatch("^2 areas are sewn on bare cloth without underlay; the largest has 30[0-9] mm2\\.$");

    private static Fill Bare(Box box) => Fill.Of(box) with { UnderlayPitch = 0 };

    private static Severity? Level(Func<Draft, Draft> sew) => RuleCases.Drafted(sew).Finding("stitch.no-underlay")?.Severity;
}
