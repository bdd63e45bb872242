using CapPrep.Engine.Approvals;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tests.Sequence;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Approvals;

/// <summary>Approved work is never changed.</summary>
public sealed class ApprovedOrderTests
{
    private static readonly Job FromTheTop = Job.Clean with
    {
        Tape = Sewn.Colored([.. new[] { Sewn.Top, Sewn.Middle, Sewn.Base }.Select(box => box.Shift(70, -180))]),
        Ticket = Job.Clean.Ticket with
        {
            Threads = [new() { Block = 1, Name = "Navy" }, new() { Block = 2, Name = "Red" }, new() { Block = 3, Name = "Gold" }],
        },
    };

    private static readonly Approval AsReceived = new()
    {
        Decision = "dec_1",
        By = "Marta Quist",
        At = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero),
        OrderNumber = "HL-1042",
    };

    [Fact]
    public void The_received_order_is_kept_whatever_another_would_gain()
    {
        FromTheTop.Prepare().Verdict.ShouldBe(Verdict.SewResequenced);

        var repeat = Prepare(FromTheTop, AsReceived);

        repeat.Verdict.ShouldBe(Verdict.SewAsReceived);
        repeat.Order!.Used.ShouldBe(UsedOrder.Received);
        repeat.Order.KeptBecause.ShouldBe("These stitches were approved on 2026-03-02, order HL-1042.");
        repeat.TapeToSew!.StitchesEqual.ShouldBeTrue();
        repeat.TapeToSew.Changes.ShouldNotContain(TapeChange.StartEnd);
        repeat.TapeToSew.OriginShift.ShouldBe(TapePoint.Origin);
        repeat.Summary.Lead.ShouldStartWith("Sew as received, approved on 2026-03-02, order HL-1042.");
    }

    [Theory]
    [InlineData(TurnedBy.Machine, TurnedBy.Machine)]
    [InlineData(TurnedBy.Tape, TurnedBy.Tape)]
    [InlineData(TurnedBy.Tape, TurnedBy.Machine)]
    [InlineData(TurnedBy.Machine, TurnedBy.Tape)]
    public void An_approved_tape_is_sewn_again_stitch_by_stitch_the_right_way_round(TurnedBy then, TurnedBy now)
    {
        var first = By(FromTheTop, then).Prepare();
        first.Verdict.ShouldBe(Verdict.SewResequenced);

        var repeat = Prepare(By(FromTheTop, now), Approved(first, then));

        repeat.Verdict.ShouldBe(Verdict.SewResequenced);
        var (sample, again) = (Needles(first.TapeToSew!.Bytes), Needles(repeat.TapeToSew!.Bytes));
        again.ShouldBe(then == now ? sample : sample.Select(point => point.Turned()));
        repeat.TapeToSew.Changes.ShouldBe(By(FromTheTop, now).Prepare().TapeToSew!.Changes);
        repeat.NeedlePlan.Select(step => (step.Step, step.Block, step.Stitches, step.Thread?.Name)).ShouldBe(
            first.NeedlePlan.Select(step => (step.Step, step.Block, step.Stitches, step.Thread?.Name)));
        repeat.NeedlePlan.SelectMany(step => step.Elements).ShouldBe(first.NeedlePlan.SelectMany(step => step.Elements));
        repeat.Seating!.KeyIn.ShouldBe(first.Seating!.KeyIn);
        repeat.Order!.Order.ShouldBe(first.Order!.Order);
        repeat.Order.KeptBecause.ShouldBeEmpty();
        repeat.LossCheck!.Clauses.ShouldAllBe(clause => clause.Passed);
        repeat.Findings.Select(finding => (finding.Rule, finding.State)).ShouldBe(first.Findings.Select(finding => (finding.Rule, finding.State)));
    }

    [Fact]
    public void A_ticket_that_asks_for_the_received_order_gets_it()
    {
        var job = FromTheTop with { Ticket = FromTheTop.Ticket with { SewOrder = new TicketSewOrder { Mode = SewOrderMode.AsReceived } } };

        var repeat = Prepare(job, Approved(FromTheTop.Prepare(), TurnedBy.Machine), sewnBefore: true);

        repeat.Verdict.ShouldBe(Verdict.SewAsReceived);
        repeat.Approval.ShouldBeNull();
        repeat.FirstCap.Is.ShouldBe(FirstCapIs.Required);
    }

    [Fact]
    public void Where_the_design_is_read_otherwise_now_the_approved_stitches_are_sewn_all_the_same()
    {
        var first = FromTheTop.Prepare();
        var approved = Approved(first, TurnedBy.Machine);

        var repeat = Prepare(FromTheTop, approved with { Sewn = approved.Sewn! with { Order = [1, 2] } });

        repeat.Verdict.ShouldBe(Verdict.SewResequenced);
        repeat.Order.ShouldBeNull();
        Needles(repeat.TapeToSew!.Bytes).ShouldBe(Needles(first.TapeToSew!.Bytes));
    }

    [Fact]
    public void A_tape_of_another_design_is_our_fault_and_leaves_nothing()
    {
        var approved = Approved(FromTheTop.Prepare(), TurnedBy.Machine);

        Should.Throw<EngineFaultException>(() => Prepare(FromTheTop, approved with { Sewn = approved.Sewn! with { Blocks = [1, 2, 9] } }));
    }

    [Fact]
    public void On_this_machine_within_a_year_no_first_cap_is_needed_otherwise_one_is_advised()
    {
        var approved = Approved(FromTheTop.Prepare(), TurnedBy.Machine);

        Prepare(FromTheTop, approved, sewnBefore: true).FirstCap.Is.ShouldBe(FirstCapIs.No);
        Prepare(FromTheTop, approved, sewnBefore: false).FirstCap.Is.ShouldBe(FirstCapIs.Advised);
    }

    [Fact]
    public void What_holds_a_design_holds_an_approved_one_too()
    {
        var job = FromTheTop with { Ticket = FromTheTop.Ticket with { ExpectedSize = new ExpectedSize(20, 20) } };

        var repeat = Prepare(job, AsReceived);

        repeat.Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
        repeat.TapeToSew.ShouldBeNull();
        repeat.Summary.Lead.ShouldStartWith("Do not sew");
    }

    private static Preparation Prepare(Job job, Approval approval, bool sewnBefore = false) =>
        CapPrepper.Prepare(job.Request() with { Approval = approval, SewnBefore = sewnBefore });

    private static Approval Approved(Preparation first, TurnedBy by) => AsReceived with
    {
        Sewn = new ApprovedTape(
            Stitched.Read(first.TapeToSew!.Bytes),
            IsTurned: by == TurnedBy.Tape,
            first.TapeToSew.OriginShift,
            [.. first.Order!.Order.Select(element => element + 1)],
            [.. first.NeedlePlan.Select(step => step.Block)]),
    };

    private static Job By(Job job, TurnedBy by) => job with { Machine = job.Machine with { Tape = job.Machine.Tape with { Turn180 = by } } };

    private static IEnumerable<TapePoint> Needles(byte[] tape)
    {
        var stitches = StitchSequence.Of(Stitched.Read(tape), 3);
        return [.. Enumerable.Range(0, stitches.Count).Select(stitches.At)];
    }
}
