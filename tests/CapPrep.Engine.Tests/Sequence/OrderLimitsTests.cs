using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence;

/// <summary>What ticket, machine, thread and technique allow an order to be.</summary>
public sealed class OrderLimitsTests
{
    private static readonly Box[] FromTheTop = [Sewn.Top, Sewn.Middle, Sewn.Base];

    private static Job Wrong => Job.Clean with { Tape = Sewn.Trimmed(FromTheTop) };

    [Fact]
    public void A_better_order_is_sewn_with_the_finding_that_it_solves_as_reason()
    {
        var prepared = Wrong.Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewResequenced);
        prepared.VerdictReasons.Select(reason => reason.Rule).ShouldContain("order.bottom-up");
        prepared.TapeToSew!.StitchesEqual.ShouldBeFalse();
        prepared.TapeToSew.Changes.ShouldContain(TapeChange.Order);
        prepared.TapeToSew.Bytes.ShouldBe(prepared.ProposedTape);
        prepared.FirstCap.Because.ShouldContain("re-sequenced tape");
        prepared.LossCheck!.Passed.ShouldBeTrue();
    }

    [Fact]
    public void A_ticket_that_asks_for_the_received_order_gets_it()
    {
        var prepared = WithOrder(Wrong, new TicketSewOrder { Mode = SewOrderMode.AsReceived }).Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewAsReceived);
        prepared.Order!.KeptBecause.ShouldBe("The ticket asks for the received order.");
        prepared.TapeToSew!.StitchesEqual.ShouldBeTrue();
        prepared.ProposedTape.ShouldNotBeNull();
    }

    [Fact]
    public void Every_color_is_sewn_once_even_where_another_color_would_help()
    {
        var stitched = Threads(Job.Clean with { Tape = Sewn.Colored(FromTheTop) }, "Navy", "Red", "Gold").Prepare();

        stitched.Order!.Proposed.ColorChanges.ShouldBe(stitched.Order.Received.ColorChanges);
        stitched.NeedlePlan.Select(step => step.Block).ShouldBe([3, 2, 1]);
    }

    [Fact]
    public void Nothing_is_sewn_across_a_stop_between_two_blocks_of_one_thread()
    {
        var job = Threads(Job.Clean with { Tape = Sewn.Colored(FromTheTop) }, "Navy", "Navy", "Navy");

        var prepared = job.Prepare();

        prepared.Order!.IsChanged.ShouldBeFalse();
        prepared.Verdict.ShouldBe(Verdict.SewAsReceived);
    }

    [Fact]
    public void Nothing_is_sewn_across_a_stop_that_the_ticket_marks()
    {
        var job = Threads(Job.Clean with { Tape = Sewn.Colored(FromTheTop) }, "Navy", "Red", "Gold");
        var marked = job with
        {
            Ticket = job.Ticket with { Threads = [job.Ticket.Threads![0], job.Ticket.Threads[1] with { Action = StopAction.PlacePatch }, job.Ticket.Threads[2]] },
        };

        marked.Prepare().Order!.IsChanged.ShouldBeFalse();
        job.Prepare().Order!.IsChanged.ShouldBeTrue();
    }

    [Fact]
    public void A_flat_clamp_and_foam_keep_the_received_order()
    {
        (Wrong with { Frame = Wrong.Frame with { Holds = FrameHold.FlatClamp } }).Prepare().Order!.Used.ShouldBe(UsedOrder.Received);
        (Wrong with { Ticket = Wrong.Ticket with { Technique = Technique.Foam } }).Prepare().Order!.Used.ShouldBe(UsedOrder.Received);
    }

    [Fact]
    public void A_machine_that_trims_at_stops_only_gets_no_new_trim()
    {
        var joined = new Draft();
        foreach (var box in FromTheTop)
            joined.Sew(Fill.Of(box));
        var job = Job.Clean with { Tape = joined.ToTape("JOINED") };
        var machine = job.Machine with { Tape = job.Machine.Tape with { TrimBy = TrimBy.StopOnly } };

        var order = (job with { Machine = machine }).Prepare().Order!;

        order.Proposed.Trims.ShouldBe(order.Received.Trims);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(40)]
    public void Trims_stay_within_what_the_ticket_allows(int extra)
    {
        var prepared = WithOrder(Wrong, new TicketSewOrder { AllowExtraTrims = extra }).Prepare();

        prepared.Order!.Proposed.Trims.ShouldBeLessThanOrEqualTo(prepared.Order.Received.Trims + extra);
        prepared.Order.TradeOffs[0].Chosen.ShouldBeFalse();
        prepared.Order.TradeOffs.Count(row => row.Chosen).ShouldBe(1);
    }

    [Fact]
    public void A_tack_down_under_everything_stays_first_and_is_not_judged()
    {
        var draft = new Draft();
        draft.Stitch(new(-300, 0)).Run(40, [.. Enumerable.Range(0, 13).Select(i => new TapePoint(i % 2 == 0 ? -300 : 300, 30 * i))]);
        foreach (var box in new[] { Sewn.Base, Sewn.Middle, new Box(-300, 260, 300, 360) })
            draft.Trim(new(box.Left, box.Bottom)).Stitch(new(box.Left, box.Bottom)).Tie(box.Center).Sew(Fill.Of(box)).Tie(box.Center);

        var order = (Job.Clean with { Tape = draft.ToTape("TACKED") }).Prepare().Order!;

        order.Order[0].ShouldBe(0);
        order.Received.Shares.OrderIndex.ShouldBe(0);
    }

    [Fact]
    public void A_tape_with_records_of_unknown_meaning_keeps_its_order()
    {
        var prepared = Checks.RuleCases.All["tape.unknown-bits_fail"].Prepare();

        prepared.Verdict.ShouldBe(Verdict.SewAsReceived);
        prepared.ProposedTape.ShouldBeNull();
    }

    [Fact]
    public void What_was_written_keeps_its_order_when_it_comes_again()
    {
        var first = Wrong.Prepare();

        var again = (Wrong with { Tape = Stitched.Read(first.TapeToSew!.Bytes) }).Prepare();

        again.Verdict.ShouldBe(Verdict.SewAsReceived);
        again.Order!.Received.Shares.OrderIndex.ShouldBe(0);
    }

    private static Job WithOrder(Job job, TicketSewOrder order) => job with { Ticket = job.Ticket with { SewOrder = order } };

    private static Job Threads(Job job, params string[] names) => job with
    {
        Ticket = job.Ticket with { Threads = [.. names.Select((name, i) => new TicketThread { Block = i + 1, Name = name })] },
    };
}
