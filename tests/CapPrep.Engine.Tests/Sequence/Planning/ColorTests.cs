using CapPrep.Engine.Losses;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Planning;

/// <summary>Color blocks that are cut in two, put together, or share their elements otherwise.</summary>
public sealed class ColorTests
{
    /// <summary>The middle box can only be sewn too late or too early. It and the lowest one are read as two elements each.</summary>
    private static readonly Job TopTooEarly = Sewn.InThreads(("Navy", [Sewn.Top, Sewn.Base]), ("Sand", [Sewn.Middle]));

    private static readonly TicketSewOrder OneMore = new() { AllowExtraColorChanges = 1 };

    [Fact]
    public void Another_color_change_is_told_with_its_time_and_not_taken()
    {
        var order = TopTooEarly.Prepare().Order!;

        var row = order.TradeOffs.Single(row => row.ExtraColorChanges == 1);
        row.OrderIndex.ShouldBe(0);
        row.WhyNot.ShouldBe("Another color change is not allowed on this order.");
        row.Claim.ShouldBe(CertificateClaim.Found);
        row.ExtraSecondsPerCap.ShouldBe((row.ExtraTrims * Job.Clean.Machine.Stops.TrimSeconds) + Job.Clean.Machine.Stops.ColorChangeSeconds);
        row.ExtraMinutes.ShouldBe(row.ExtraSecondsPerCap * 6 / 60, 0.05);
        order.Proposed.ColorChanges.ShouldBe(1);
        order.Certificate.Claim.ShouldBe(CertificateClaim.Proven);
    }

    [Fact]
    public void A_thread_is_sewn_twice_where_the_ticket_allows_it()
    {
        var prepared = TopTooEarly.Allowing(OneMore).Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewResequenced);
        prepared.Order!.Proposed.ColorChanges.ShouldBe(2);
        prepared.Order.Order.ShouldBe([1, 2, 3, 4, 0]);
        prepared.Order.Certificate.Claim.ShouldBe(CertificateClaim.Found);
        prepared.Order.Certificate.Under.ShouldNotContain("colors");
        prepared.NeedlePlan.Select(step => (step.Block, step.Thread!.Name, step.Returns)).ShouldBe([(1, "Navy", false), (2, "Sand", false), (1, "Navy", true)]);
        prepared.NeedlePlan.Select(step => step.Elements).ShouldBe([[1, 2], [3, 4], [0]]);
        prepared.LossCheck!.Clauses.Select(clause => clause.Clause).ShouldBe(Enum.GetValues<LossClause>());
        prepared.LossCheck.Clauses.ShouldAllBe(clause => clause.Passed);
    }

    [Fact]
    public void The_rule_book_of_the_shop_may_allow_another_color_change()
    {
        var book = new RuleBook { Id = "harbor", Name = "Harbor", SewOrder = new() { ExtraColorChanges = 1 } };

        (TopTooEarly with { Book = book }).Prepare().Order!.Proposed.ColorChanges.ShouldBe(2);
        (TopTooEarly with { Book = book }).Allowing(new() { AllowExtraColorChanges = 0 }).Prepare().Order!.Proposed.ColorChanges.ShouldBe(1);
    }

    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(30, 2)]
    public void An_allowed_color_change_must_fit_into_the_time_of_the_order(double minutes, int changes) =>
        TopTooEarly.Allowing(OneMore with { ExtraMinutes = minutes }).Prepare().Order!.Proposed.ColorChanges.ShouldBe(changes);

    [Fact]
    public void Without_time_for_it_the_row_says_so() =>
        TopTooEarly.Allowing(OneMore with { ExtraMinutes = 0 }).Prepare().Order!.TradeOffs.Single(row => row.ExtraColorChanges == 1)
            .WhyNot.ShouldBe("It takes longer than this order allows.");

    [Fact]
    public void Where_layers_alone_decide_no_color_change_is_offered() =>
        Sewn.InThreads(("Navy", [Sewn.Base, Sewn.Middle]), ("Sand", [Sewn.Top])).Prepare().Order!.TradeOffs.ShouldAllBe(row => row.ExtraColorChanges == 0);

    [Fact]
    public void Blocks_of_one_thread_are_put_together_where_that_costs_no_order()
    {
        var prepared = Sewn.InThreads(("Navy", [Sewn.Left]), ("Sand", [Sewn.Center]), ("Navy", [Sewn.Right])).Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewResequenced);
        prepared.Order!.Proposed.ColorChanges.ShouldBe(1);
        prepared.Order.TradeOffs.Single(row => row.Chosen).ExtraColorChanges.ShouldBe(-1);
        prepared.Order.Certificate.Claim.ShouldBe(CertificateClaim.Found);
        prepared.NeedlePlan.Select(step => (step.Block, step.Thread!.Name, step.Returns)).ShouldBe([(2, "Sand", false), (1, "Navy", false)]);
        prepared.NeedlePlan[1].Elements.Order().ShouldBe([0, 2]);
        prepared.LossCheck!.Clauses.ShouldAllBe(clause => clause.Passed);
    }

    [Fact]
    public void Blocks_of_two_threads_stay_apart() =>
        Sewn.InThreads(("Navy", [Sewn.Left]), ("Sand", [Sewn.Center]), ("Red", [Sewn.Right])).Prepare().Order!.Proposed.ColorChanges.ShouldBe(2);

    [Fact]
    public void An_element_goes_to_the_block_of_its_thread_where_it_is_sewn_in_time()
    {
        var prepared = Sewn.InThreads(("Navy", [Sewn.Top, Sewn.Base]), ("Sand", [Sewn.Middle]), ("Navy", [new(-40, 390, 40, 440)])).Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewResequenced);
        prepared.Order!.Proposed.Shares.OrderIndex.ShouldBe(0);
        prepared.Order.Proposed.ColorChanges.ShouldBe(2);
        prepared.NeedlePlan.Select(step => step.Elements).ShouldBe([[1, 2], [3, 4], [0, 5]]);
        prepared.NeedlePlan.Select(step => step.Returns).ShouldBe([false, false, true]);
        prepared.LossCheck!.Clauses.ShouldAllBe(clause => clause.Passed);
    }

    [Fact]
    public void Blocks_beside_a_deliberate_stop_are_neither_cut_nor_put_together()
    {
        var order = Sewn.InThreads(("Navy", [Sewn.Top, Sewn.Base]), ("Navy", [Sewn.Middle])).Allowing(OneMore).Prepare().Order!;

        order.Proposed.ColorChanges.ShouldBe(1);
        order.IsChanged.ShouldBeFalse();
        order.TradeOffs.ShouldAllBe(row => row.ExtraColorChanges == 0);
    }

    [Fact]
    public void Every_step_of_cutting_an_inward_line_apart_has_its_minutes()
    {
        var order = Checks.RuleCases.All["order.text-line_fail"].Prepare().Order!;

        var rows = order.TradeOffs.Where(row => row.WhyNot.EndsWith("minutes on this order.", StringComparison.Ordinal)).ToList();
        rows.ShouldNotBeEmpty();
        rows.ShouldAllBe(row => !row.Chosen && row.Claim == CertificateClaim.Found && row.LineIndexMax < order.Proposed.Shares.LineIndexMax && row.OrderIndex == order.Proposed.Shares.OrderIndex);
        rows.Select(row => row.ExtraTrims).ShouldBeInOrder();
        rows.Select(row => row.LineIndexMax).ShouldBeInOrder(SortDirection.Descending);
        rows[^1].WhyNot.ShouldStartWith("Every letter trimmed: ");
        rows[^1].LineIndexMax.ShouldBe(0);
    }

    [Fact]
    public void A_line_sewn_outward_is_not_cut_apart() =>
        Checks.RuleCases.All["order.text-line_pass"].Prepare().Order!.TradeOffs.ShouldAllBe(row => !row.WhyNot.EndsWith("minutes on this order."));
}
