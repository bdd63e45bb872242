using CapPrep.Engine.Drafting;
using CapPrep.Engine.Tests.Checks.OnTechnique;
using CapPrep.Engine.Tests.Checks;
using CapPrep.Engine.Tickets;
using Shouldly;
using Xunit;
using Bar = CapPrep.Engine.Tests.Checks.OnTechnique.FoamDrafts.Bar;

namespace CapPrep.Engine.Tests.Sequence.Planning;

public sealed class DeliberateStopTests
{
    [Fact]
    public void A_stop_that_the_ticket_marks_keeps_its_action() =>
        Actions(RuleCases.Colored(3, 3), new TicketThread { Block = 1, Name = "A" }, new() { Block = 2, Name = "B", Action = StopAction.PlacePatch }, new() { Block = 3, Name = "C" })
            .ShouldBe([StopAction.None, StopAction.PlacePatch, StopAction.None]);

    [Fact]
    public void A_stop_between_blocks_of_one_thread_waits_for_the_operator() =>
        Actions(RuleCases.Colored(3, 3), new TicketThread { Block = 1, Name = "A" }, new() { Block = 2, Name = "B" }, new() { Block = 3, Name = "B" })
            .ShouldBe([StopAction.None, StopAction.None, StopAction.Pause]);

    [Fact]
    public void Without_threads_every_stop_is_ordinary() =>
        Actions(Job.Clean with { Tape = Stitched.Colors(3), Ticket = Job.Clean.Ticket with { Threads = null } })
            .ShouldBe([StopAction.None, StopAction.None, StopAction.None]);

    [Theory]
    [InlineData(null)]
    [InlineData(Technique.Applique)]
    public void An_applique_is_found_by_its_shape(Technique? technique) =>
        Actions(FoamDrafts.Said(technique, draft => draft.Line().Stop().Line(-0.5).Stop().Cover()))
            .ShouldBe([StopAction.None, StopAction.PlacePatch, StopAction.TrimFabric]);

    [Theory]
    [InlineData(1.8)]
    [InlineData(2.6)]
    public void A_zigzag_may_hold_the_fabric(double width) =>
        Actions(FoamDrafts.Said(null, draft => draft.Line().Stop().Net(width).Stop().Cover()))
            .ShouldBe([StopAction.None, StopAction.PlacePatch, StopAction.TrimFabric]);

    [Fact]
    public void Fabric_that_is_cut_beforehand_needs_one_stop() =>
        Actions(FoamDrafts.Said(null, draft => draft.Line().Stop().Line(-0.5).Cover())).ShouldBe([StopAction.None, StopAction.PlacePatch]);

    [Fact]
    public void A_line_farther_away_holds_nothing() =>
        Actions(FoamDrafts.Said(null, draft => draft.Line().Stop().Line(-4).Stop().Cover(10))).ShouldBe([StopAction.None, StopAction.None, StopAction.None]);

    [Fact]
    public void Lines_without_satin_over_them_are_lines() =>
        Actions(FoamDrafts.Said(null, draft => draft.Line().Stop().Line(-0.5))).ShouldBe([StopAction.None, StopAction.None]);

    [Fact]
    public void What_is_sewn_behind_the_line_makes_it_underlay() =>
        Actions(FoamDrafts.Said(null, draft => draft.Line().Flat().Stop().Line(-0.5).Cover())).ShouldBe([StopAction.None, StopAction.None]);

    [Theory]
    [InlineData(Technique.Patch, StopAction.PlacePatch)]
    [InlineData(Technique.Applique, StopAction.None)]
    public void A_patch_may_be_held_by_its_edge_or_by_a_line_alone(Technique technique, StopAction expected)
    {
        Actions(FoamDrafts.Said(technique, draft => draft.Line().Stop().Cover()))[1].ShouldBe(expected);
        Actions(FoamDrafts.Said(technique, draft => draft.Line().Stop().Line(-1)))[1].ShouldBe(expected);
    }

    [Fact]
    public void Foam_is_laid_before_the_first_block_over_it() =>
        Actions(FlatThenFoam(Technique.PartFoam)).ShouldBe([StopAction.None, StopAction.LayFoam]);

    [Fact]
    public void Foam_is_laid_where_the_ticket_says() =>
        Actions(FlatThenFoam(Technique.PartFoam), new TicketThread { Block = 1, Name = "A", Action = StopAction.LayFoam }, new() { Block = 2, Name = "B", Foam = true })
            .ShouldBe([StopAction.LayFoam, StopAction.None]);

    [Fact]
    public void What_only_looks_like_foam_work_keeps_its_stops_ordinary() =>
        Actions(FoamDrafts.Said(null, FlatAndBar)).ShouldBe([StopAction.None, StopAction.None]);

    [Fact]
    public void Nothing_moves_across_a_deliberate_stop()
    {
        var free = FoamDrafts.Said(null, draft => TopThenBase(draft)).Prepare();
        var held = FoamDrafts.Said(null, draft => TopThenBase(draft), new TicketThread { Block = 1, Name = "A" }, new() { Block = 2, Name = "B", Action = StopAction.Pause }).Prepare();

        free.Verdict.ShouldBe(Verdict.SewResequenced);
        held.Verdict.ShouldBe(Verdict.SewAsReceived);
        held.NeedlePlan.Select(step => step.Block).ShouldBe([1, 2]);
        held.NeedlePlan[1].Action.ShouldBe(StopAction.Pause);
    }

    private static Draft TopThenBase(Draft draft) => draft
        .Stitch(new(-100, 300)).Sew(Fill.Of(Sewn.Top)).ColorStop().Move(new(-300, 0)).Stitch(new(-300, 0)).Sew(Fill.Of(Sewn.Base));

    private static Draft FlatAndBar(Draft draft) => draft
        .Stitch(new(-300, 0)).Sew(Column.Upright(new(-300, 0), 30, 100)).ColorStop().Move(new(0, 0)).Sew(new Bar(0, 0));

    private static Job FlatThenFoam(Technique technique) => FoamDrafts.Said(
        technique, FlatAndBar, new TicketThread { Block = 1, Name = "A" }, new() { Block = 2, Name = "B", Foam = true });

    private static IReadOnlyList<StopAction> Actions(Job job, params IReadOnlyList<TicketThread> threads)
    {
        var ticket = threads.Count > 0 ? job.Ticket with { Threads = threads } : job.Ticket;
        return [.. (job with { Ticket = ticket }).Prepare().NeedlePlan.OrderBy(step => step.Block).Select(step => step.Action)];
    }
}
