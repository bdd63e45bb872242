using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>Limits are house values.</summary>
public sealed class AppliqueRuleTests
{
    [Fact]
    public void A_good_applique_is_silent() =>
        AppliqueDrafts.Good.Prepare().Findings.ShouldAllBe(finding => finding.Severity == Severity.Note);

    [Fact]
    public void A_zigzag_holds_as_well() => AppliqueDrafts.Applique(draft => draft.Line().Stop().Net().Stop().Cover()).Prepare().Findings
        .ShouldNotContain(finding => finding.Rule.StartsWith("applique."));

    /// <summary>A line once more behind a cut, a zigzag in one go, the same line again: each holds the fabric before it is laid.</summary>
    [Fact]
    public void A_tack_down_before_the_stop_holds_the_job()
    {
        Stop(draft => draft.Line().Cut().Line(-0.5).Stop().Cover()).ShouldBe(Severity.Hold);
        Stop(draft => draft.Line().Net(2.4).Stop().Cover()).ShouldBe(Severity.Hold);
        Stop(draft => draft.Line().Line().Stop().Cover()).ShouldBe(Severity.Hold);
        Stop(draft => draft.Line().Cut().Line(-0.5).Cut().Cover()).ShouldBe(Severity.Hold);
    }

    /// <summary>The thread goes on from one line to the other; then comes the satin, behind a stop or at once.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-0.5)]
    [InlineData(-1.2)]
    public void Placement_line_and_tack_down_in_one_color_block_hold_the_job(double outward)
    {
        Stop(draft => draft.Line().Line(outward).Stop().Cover()).ShouldBe(Severity.Hold);
        Stop(draft => draft.Line().Line(outward).Stop().Cover(), AppliqueDrafts.OneThread(2)).ShouldBe(Severity.Hold);
        Stop(draft => draft.Flat().Stop().Line().Line(outward).Cover(), AppliqueDrafts.OneThread(2)).ShouldBe(Severity.Hold);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.5)]
    [InlineData(-1.2)]
    public void A_stop_between_placement_line_and_tack_down_is_enough(double outward)
    {
        Stop(draft => draft.Line().Stop().Line(outward).Stop().Cover()).ShouldBeNull();
        Stop(draft => draft.Line().Stop().Line(outward).Cover(), AppliqueDrafts.OneThread(2)).ShouldBeNull();
    }

    [Fact]
    public void A_mark_before_the_placement_line_does_not_help() => Stop(
        draft => draft.Flat().Stop().Line().Cut().Line(-0.5).Cover(),
        new TicketThread { Block = 1, Name = "Red" },
        new() { Block = 2, Name = "Red", Action = StopAction.PlacePatch }).ShouldBe(Severity.Hold);

    [Fact]
    public void A_stop_of_one_thread_before_the_cover_does_not_help() =>
        Stop(draft => draft.Line().Cut().Line(-0.5).Stop().Cover(), AppliqueDrafts.OneThread(2)).ShouldBe(Severity.Hold);

    [Fact]
    public void A_placement_line_may_be_sewn_twice() => Stop(draft => draft.Line().Line().Stop().Line(-0.5).Cover()).ShouldBeNull();

    [Fact]
    public void A_ticket_that_says_where_fabric_is_laid_is_believed() => Stop(
        draft => draft.Line().Cut().Line(-0.5).Stop().Cover(),
        new TicketThread { Block = 1, Name = "Red" },
        new() { Block = 2, Name = "Red", Action = StopAction.PlacePatch }).ShouldBeNull();

    [Fact]
    public void A_tape_of_one_block_holds() => Stop(draft => draft.Flat()).ShouldBe(Severity.Hold);

    [Fact]
    public void Stops_that_nobody_can_name_warn() => Stop(draft => draft.Flat().ColorStop().Move(new(-50, 0)).Stitch(new(-50, 0)).Sew(Fill.Of(new Box(-50, 0, 50, 60)))).ShouldBe(Severity.Warn);

    [Fact]
    public void A_stop_of_one_thread_may_be_the_one() => Stop(
        draft => draft.Flat().ColorStop().Move(new(-50, 0)).Stitch(new(-50, 0)).Sew(Fill.Of(new Box(-50, 0, 50, 60))),
        AppliqueDrafts.OneThread(2)).ShouldBeNull();

    [Fact]
    public void An_ordinary_ring_beside_a_good_applique_is_no_fault() => Stop(draft => draft
        .Line().Stop().Line(-0.5).Stop().Cover().ColorStop().Move(new(100, 200))
        .Stitches(Circle(31, 7)).Stitches(Circle(31, 7)).Stitches(Circle(301, 7, 3))).ShouldBeNull();

    [Fact]
    public void Flat_designs_are_not_judged() => FoamDrafts.Said(null, draft => draft.Line().Cut().Line(-0.5).Stop().Cover(2.4, 1)).Prepare().Findings
        .ShouldNotContain(finding => finding.Rule.StartsWith("applique."));

    [Theory]
    [InlineData(2.8, Severity.Warn)]
    [InlineData(3.2, null)]
    public void The_cover_has_to_be_wide_enough(double width, Severity? expected) =>
        Level("applique.cover", AppliqueDrafts.Covered(width)).ShouldBe(expected);

    [Theory]
    [InlineData(0.5, null)]
    [InlineData(-0.5, null)]
    [InlineData(1.1, Severity.Warn)]
    [InlineData(-1.1, Severity.Warn)]
    public void The_cover_reaches_past_both_sides_of_the_edge(double outward, Severity? expected) =>
        Level("applique.edge", AppliqueDrafts.Covered(3.8, outward)).ShouldBe(expected);

    [Fact]
    public void Narrow_satin_that_lies_evenly_over_the_edge_is_only_narrow()
    {
        Level("applique.edge", AppliqueDrafts.Covered(1.8)).ShouldBeNull();
        Level("applique.cover", AppliqueDrafts.Covered(1.8)).ShouldBe(Severity.Warn);
    }

    /// <summary>Trimmed along the tack-down, 1.2 mm inside the placement line; not trimmed, the placement line is the edge.</summary>
    [Theory]
    [InlineData(true, Severity.Warn)]
    [InlineData(false, null)]
    public void Fabric_is_cut_along_the_line_that_holds_it(bool trimmed, Severity? expected) => Level(
        "applique.edge",
        AppliqueDrafts.Applique(draft => trimmed ? draft.Line().Stop().Line(-1.2).Stop().Cover(3.8) : draft.Line().Stop().Line(-1.2).Cut().Cover(3.8))).ShouldBe(expected);

    [Theory]
    [InlineData(1, null)]
    [InlineData(0.9, Severity.Warn)]
    [InlineData(0.6, Severity.Warn)]
    public void The_tack_down_closes_before_the_cover_begins(double share, Severity? expected) =>
        Level("applique.early", AppliqueDrafts.Applique(draft => draft.Line().Stop().Line(0, share).Stop().Cover())).ShouldBe(expected);

    [Fact]
    public void A_cover_sewn_before_its_tack_down_warns() =>
        Level("applique.early", AppliqueDrafts.Applique(draft => draft.Line().Stop().Cover().Stop().Net())).ShouldBe(Severity.Warn);

    [Theory]
    [InlineData(Technique.Applique, Severity.Warn)]
    [InlineData(Technique.Patch, null)]
    public void A_patch_may_be_held_by_its_edge_alone(Technique technique, Severity? expected) =>
        Level("applique.early", FoamDrafts.Said(technique, draft => draft.Line().Stop().Cover())).ShouldBe(expected);

    [Fact]
    public void A_patch_without_a_stop_holds() =>
        Level("applique.no-stop", FoamDrafts.Said(Technique.Patch, draft => draft.Line().Cut().Line(-0.5).Cut().Cover())).ShouldBe(Severity.Hold);

    private static IEnumerable<TapePoint> Circle(int points, double radius, double width = 0) => Enumerable.Range(0, points).Select(point =>
    {
        var (turn, at) = (2 * Math.PI * point / (points - 1), radius + (point % 2 == 0 ? width / 2 : -width / 2));
        return FoamDrafts.At(at * Math.Cos(turn), 20 + (at * Math.Sin(turn)));
    });

    private static Severity? Stop(Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) =>
        Level("applique.no-stop", AppliqueDrafts.Applique(sew, threads));

    private static Severity? Level(string rule, Job job) => job.Finding(rule)?.Severity;
}
