using CapPrep.Engine.Checks;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Search;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Planning;

/// <summary>What holds of every proposed order, with color changes allowed and threads that return.</summary>
public sealed class OrderPropertyTests
{
    private const int Designs = 40;

    [Fact]
    public void A_proposed_order_keeps_layers_and_what_is_allowed_and_is_never_worse()
    {
        var changed = 0;
        for (var number = 0; number < Designs; number++)
        {
            var (subject, extra) = (SubjectOf(number), number % 3);
            if (!subject.IsSeated || !subject.Reading.OrderMayChange)
                continue;
            var request = OrderRequests.For(subject, subject.Stitches) with { Mode = SewOrderMode.Always };
            var order = SewOrderPlanner.Plan(request with { Budget = request.Budget with { AllowExtraColorChanges = extra } });

            var place = OrderShares.Places(order.Order);
            request.Reading.MustFollow.ShouldAllBe(pair => place[pair.Before] < place[pair.After]);
            PriceOf(request, order.Order, order.Proposed.Trims).ShouldBeLessThanOrEqualTo(
                PriceOf(request, [.. Enumerable.Range(0, order.Order.Count)], order.Received.Trims));
            (order.Proposed.ColorChanges - order.Received.ColorChanges).ShouldBeLessThanOrEqualTo(extra);
            order.TradeOffs.Count.ShouldBeLessThanOrEqualTo(10);
            order.TradeOffs.Count(row => row.Chosen).ShouldBe(1);
            order.TradeOffs.ShouldAllBe(row => row.ExtraColorChanges == 0 || row.Claim == CertificateClaim.Found);
            if (order.IsChanged)
                SewTape.InOrder(subject, order.Plan, "10427").Losses.Clauses.ShouldAllBe(clause => clause.Passed);
            changed += order.IsChanged ? 1 : 0;
        }

        changed.ShouldBeGreaterThan(Designs / 4);
    }

    private static long PriceOf(SewOrderRequest request, IReadOnlyList<int> order, int trims)
    {
        var table = PlanningTable.Of(request);
        return new LinearOrder(table.Costs.Objective(), table.Precedence, table.Seed).CostOf([.. order]) + (PlanningTable.TrimPrice * trims);
    }

    /// <summary>Two threads by turns, or a thread for every block.</summary>
    private static Subject SubjectOf(int number)
    {
        var job = Job.Clean with { Tape = RandomDesign.Of(number).Draft.ToTape("TEST") };
        var stitches = StitchSequence.Of(job.Tape, 3);
        var threads = Enumerable.Range(1, stitches.Blocks).Select(block => new TicketThread { Block = block, Name = number % 2 == 0 ? $"Thread {block % 2}" : $"Thread {block}" });
        var request = (job with { Ticket = job.Ticket with { Threads = [.. threads] } }).Request();
        return new Subject(job.Tape, stitches, request.Ticket, request.Setup, Seater.Seat(stitches, request.Ticket, request.Setup)!);
    }
}
