using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence;

/// <summary>What was worked out about the sew order of a design.</summary>
/// <param name="Order">Received and proposed order, and which of the two is used.</param>
/// <param name="Proposed">The tape in the proposed order; null when no order is better or the machine cannot take it.</param>
/// <param name="Rounds">How often the written tape was read and ordered again before nothing changed any more.</param>
/// <param name="IsSettled">False: a further round would still change the order, or was not made.</param>
internal sealed record Ordering(SewOrder Order, SewTape? Proposed, int Rounds, bool IsSettled)
{
    // Beyond so many elements another round takes longer than it is worth.
    private const int MostElementsToSettle = 600;

    /// <summary>What the sheet model says of both orders; null where it says nothing.</summary>
    internal ShiftReport? Shift { get; private init; }

    /// <summary>What is to be said of the received order, and of a new one that would change again.</summary>
    internal IReadOnlyList<OrderRuleResult> ReceivedRules => Order.Used == UsedOrder.Proposed
        ? [.. Order.ReceivedRules, .. OfNewOrder]
        : Order.ReceivedRules;

    private IEnumerable<OrderRuleResult> OfNewOrder =>
    [
        .. IsSettled ? [] : new[] { Noted(OrderRuleIds.NotSettled, 0) },
        .. Shift is { Disagrees: true } ? new[] { Noted(OrderRuleIds.ShiftDisagrees, Shift.DriftRatio) } : [],
    ];

    /// <summary>Null for a design that lies on no cap or could only be read coarsely.</summary>
    /// <param name="approval">Approved work keeps its order; null: there is none.</param>
    internal static Ordering? Of(Subject received, string label, Approval? approval)
    {
        if (!received.IsSeated || !received.Reading.OrderMayChange)
            return null;
        var shift = ShiftModel.Of(received);
        var ordering = Of(received, label, approval, shift);
        return ordering is null || shift is null
            ? ordering
            : ordering with { Shift = ShiftReporter.Of(received, shift, ordering.Order.Order, ordering.Order.Used == UsedOrder.Proposed) };
    }

    private static Ordering? Of(Subject received, string label, Approval? approval, ShiftModel? shift)
    {
        var request = OrderRequests.For(received, received.Stitches, shift);
        if (approval?.Sewn is { } sewn)
            return InApprovedOrder(received, label, sewn, request);
        var order = SewOrderPlanner.Plan(request with { Settled = approval is null ? null : new(null, $"These stitches were {approval.Note}.") });
        if (!order.IsChanged || !SewTape.CanWrite(received))
            return new(order, null, 0, IsSettled: true);
        var proposed = SewTape.InOrder(received, order.Plan, label);
        return order.Order.Count > MostElementsToSettle
            ? new(order, proposed, 0, IsSettled: false)
            : Settled(order, proposed, received.Stitches);
    }

    /// <summary>Null where the design is read into other elements now: then nothing can be said of the approved order.</summary>
    private static Ordering? InApprovedOrder(Subject received, string label, ApprovedTape sewn, SewOrderRequest request)
    {
        if (sewn.OrderOf(received.Reading.Elements.Count) is not { } approved)
            return null;
        var order = SewOrderPlanner.Plan(request with { Settled = new(approved, "") { Blocks = sewn.BlocksOf(received.Reading.Elements) } });
        return new(order, ApprovedWriting.Write(received, sewn, label), 0, IsSettled: true);
    }

    private static Ordering Settled(SewOrder order, SewTape proposed, StitchSequence first)
    {
        var again = SewOrderPlanner.Plan(OrderRequests.For(proposed.ReadBack, first) with { Mode = SewOrderMode.IfBetter });
        return new(order, proposed, 1, again.Used == UsedOrder.Received);
    }

    private static OrderRuleResult Noted(string rule, double share) => new(rule, Severity.Note, share, HeldBy.Nothing, []);
}
