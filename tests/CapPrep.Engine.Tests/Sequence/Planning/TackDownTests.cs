using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tests.Checks.OnTechnique;
using CapPrep.Engine.Tickets;
using Shouldly;
using Xunit;
using Bar = CapPrep.Engine.Tests.Checks.OnTechnique.FoamDrafts.Bar;

namespace CapPrep.Engine.Tests.Sequence.Planning;

/// <summary>What is sewn first on purpose stays first, and no order rule calls it wrong.</summary>
public sealed class TackDownTests
{
    private static readonly TapePoint[] Tree =
        [new(0, 0), new(-250, 80), new(0, 30), new(250, 80), new(0, 60), new(-150, 200), new(0, 100), new(150, 200), new(0, 150), new(-60, 340), new(0, 200), new(60, 340), new(0, 0)];

    [Fact]
    public void A_run_under_most_of_the_design_is_tack_down() => Found(draft => draft.Run(40, Tree).Boxes(Sewn.Base, Sewn.Middle, Sewn.Top)).ShouldBe([0]);

    [Fact]
    public void A_wide_zigzag_net_is_tack_down() => Found(draft => draft
        .Stitches(Enumerable.Range(0, 24).Select(k => new TapePoint(k % 2 == 0 ? -100 : 100, k * 14)))
        .Boxes(new Box(-120, 0, 120, 340))).ShouldBe([0]);

    [Fact]
    public void A_run_that_stays_in_sight_is_none() => Found(draft => draft.Run(40, Tree).Boxes(new Box(-40, 30, 40, 60))).ShouldBeEmpty();

    [Fact]
    public void A_run_under_a_small_part_is_none() => Found(draft => draft
        .Run(40, new TapePoint(-250, 20), new(-100, 80)).Boxes(Sewn.Base, Sewn.Middle, Sewn.Top)).ShouldBeEmpty();

    [Fact]
    public void No_order_rule_speaks_of_tack_down_sewn_from_top_to_bottom_and_back()
    {
        var findings = Prepared(null, draft => draft.Run(40, [.. Tree.Reverse()]).Boxes(Sewn.Base, Sewn.Middle, Sewn.Top)).Findings;

        findings.ShouldNotContain(finding => finding.Rule.StartsWith("order."));
    }

    [Fact]
    public void A_base_fill_counts_only_where_it_carries_nothing() => Prepared(null, draft => draft
        .Boxes(new Box(-300, 0, 300, 400), new Box(-250, 20, 250, 80), new Box(-250, 150, 250, 210), new Box(-250, 300, 250, 360)))
        .Findings.ShouldNotContain(finding => finding.Rule.StartsWith("order."));

    /// <summary>Top bar over foam first, then the one below it.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Work_over_foam_keeps_its_order_inside_a_design(bool foam)
    {
        var prepared = Prepared(
            Technique.PartFoam,
            draft => draft.Boxes(new Box(-300, 0, 300, 60)).ColorStop().Move(new(-45, 260))
                .Sew(new Bar(-4.5, 26) { Height = 10 }).Trim(new(-45, 80)).Sew(new Bar(-4.5, 8) { Height = 10 }),
            new TicketThread { Block = 1, Name = "Navy", Foam = false },
            new() { Block = 2, Name = "White", Foam = foam });

        var upperFirst = prepared.Order!.Order.SequenceEqual(Enumerable.Range(0, prepared.Reading.Elements.Count));
        upperFirst.ShouldBe(foam);
        prepared.Findings.Any(finding => finding.Rule == "order.bottom-up").ShouldBe(!foam);
    }

    [Fact]
    public void What_looks_like_foam_work_is_not_put_in_another_order()
    {
        var prepared = Prepared(null, draft => draft.Sew(new Bar(-4.5, 25) { Height = 20 }).Trim(new(-45, 0)).Sew(new Bar(-4.5, 0) { Height = 20 }));

        prepared.Order!.Used.ShouldBe(UsedOrder.Received);
        prepared.Order.KeptBecause.ShouldContain("foam");
        prepared.Findings.ShouldNotContain(finding => finding.Rule.StartsWith("order."));
    }

    private static IReadOnlyList<int> Found(Func<Draft, Draft> sew)
    {
        var stitches = StitchSequence.Of(sew(new Draft()).ToTape("TEST"), 3);
        return TackDown.Find(DesignReader.Read(stitches), stitches);
    }

    private static Preparation Prepared(Technique? technique, Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) =>
        FoamDrafts.Said(technique, sew, threads).Prepare();
}
