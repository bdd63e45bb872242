using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning.Colors;
using CapPrep.Engine.Sequence.Planning.Polish;
using CapPrep.Engine.Sequence.Planning.Rows;
using CapPrep.Engine.Sequence.Search;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>
/// Finds the order in which a design is best sewn: layers kept, no more color changes than allowed, and of all such
/// orders the one with the least price of order, trims and color changes; among equals the one with the least travel.
/// </summary>
public static class SewOrderPlanner
{
    /// <summary>Received order, proposed order, what is proven about it, and which one is used.</summary>
    /// <exception cref="EngineFaultException">The model of the received order does not have the trims of the tape.</exception>
    public static SewOrder Plan(SewOrderRequest request)
    {
        var table = PlanningTable.Of(request);
        var objective = table.Costs.Objective();
        var problem = table.Problem(objective);
        CheckTrims(table, problem);
        var received = new CurvePoint(problem.TrimsOf(table.Received), problem.Order.CostOf(table.Received));
        if (request.Settled?.Order is { } settled)
            return Settled(table, objective, received, settled, request.Settled.Blocks);

        var colorings = ColorSearch.Of(table, objective);
        if (!MayChange(request) || Choose(colorings, received) is not { } chosen)
            return Told(colorings, table.Received, received, null);
        var order = Polished(chosen.Coloring.Table, objective, chosen.Coloring.Search.OrderWith(chosen.Point.Trims));
        return Told(colorings, order, received, chosen);
    }

    private static SewOrder Settled(
        PlanningTable table, long[] objective, CurvePoint received, IReadOnlyList<int> order, IReadOnlyList<int>? blocks)
    {
        var held = Coloring.Of(table, objective);
        var sewn = Renumbered(blocks ?? table.Blocks) is var parts && parts.SequenceEqual(table.Blocks)
            ? held
            : Coloring.Of(table with { Blocks = parts }, objective, held);
        int[] kept = [.. order];
        var problem = sewn.Table.Problem(objective);
        return Told([held], kept, received, new(sewn, new(problem.TrimsOf(kept), problem.Order.CostOf(kept))));
    }

    /// <summary>In the order in which they first occur.</summary>
    private static int[] Renumbered(IReadOnlyList<int> blocks)
    {
        int[] known = [.. blocks.Distinct()];
        return [.. blocks.Select(block => Array.IndexOf(known, block))];
    }

    /// <summary>Of orders that cost the same, one in which the cloth moves little and the needle travels little.</summary>
    private static int[] Polished(PlanningTable table, long[] objective, int[] order)
    {
        var traveled = OrderPolish.Of(table, objective, order, new TravelGoal(table));
        return table.Request.Shift is { } shift
            ? OrderPolish.Of(table, objective, traveled, new DriftGoal(shift, traveled))
            : traveled;
    }

    /// <summary>With the received trims; null where the proposed order moves the cloth little more than the received one.</summary>
    private static int[]? LeastDrift(PlanningTable table, int[] order) =>
        table.Request.Shift is { } shift && shift.Disagrees(order)
            ? OrderPolish.Of(table, [], table.Received, new DriftGoal(shift, table.Received))
            : null;

    private static bool MayChange(SewOrderRequest request) =>
        request.Reading.OrderMayChange && !request.HasUnknownRecords;

    private static void CheckTrims(PlanningTable table, OrderProblem problem)
    {
        var cuts = table.Request.Stitches.Relations.Count(Tapes.Relation.Cut);
        var modeled = problem.TrimsOf(table.Received);
        if (modeled != cuts)
            throw new EngineFaultException(FormattableString.Invariant($"The received order has {modeled} trims by its elements, {cuts} on its tape."));
    }

    /// <summary>The one with the least price of order, trims and color changes within what is allowed; null when the received order is no worse.</summary>
    private static ChosenOrder? Choose(IReadOnlyList<Coloring> colorings, CurvePoint received)
    {
        ChosenOrder[] allowed =
        [
            .. from coloring in colorings
               where coloring.IsAllowed && coloring.Best is not null
               let point = coloring.Best!.Value
               where Certificates.SumOf(point) <= Certificates.SumOf(received)
               orderby coloring.PriceOf(point)
               select new ChosenOrder(coloring, point),
        ];
        return allowed.Length > 0 && allowed[0].Price < colorings[0].PriceOf(received) ? allowed[0] : null;
    }

    private static SewOrder Told(IReadOnlyList<Coloring> colorings, int[] order, CurvePoint received, ChosenOrder? chosen)
    {
        var held = colorings[0];
        var (coloring, point) = chosen ?? new(held, received);
        var table = coloring.Table;
        var floor = Floor(held.Table);
        var receivedRules = OrderRules.Judge(table, table.Received, floor);
        var proposedRules = OrderRules.Judge(table, order, floor);
        var gain = held.PriceOf(received) - coloring.PriceOf(point);
        var why = WhyKept(table.Request, chosen is null, gain, OrderRules.LosesWarn(receivedRules, proposedRules));
        var relaxed = RelaxedPairs.Of(table.Request.Reading, table.Precedence);
        return new()
        {
            Received = Figures(held.Table, table.Received, received.Trims),
            Proposed = Figures(table, order, point.Trims),
            Floor = floor,
            Used = why.Length == 0 ? UsedOrder.Proposed : UsedOrder.Received,
            KeptBecause = why,
            Order = order,
            Certificate = Certificates.Of(coloring, point),
            TradeOffs = TradeOffs.Of(colorings, new(received, chosen, order, why, LeastDrift(held.Table, order), LineSteps.Of(table, order, proposedRules))),
            Moves = OrderMoves.Of(table, order),
            ReceivedRules = receivedRules,
            ProposedRules = proposedRules,
            MustFollowPairs = table.Precedence.Pairs,
            Relaxed = relaxed,
            Tagline = table.Subject.Lines.Tagline,
            Plan = PlanMaker.Of(table, order, relaxed),
        };
    }

    private static OrderFigures Figures(PlanningTable table, IReadOnlyList<int> order, int trims) => new(
        OrderShares.Of(table.Costs, order),
        order.Zip(order.Skip(1)).Count(pair => table.Blocks[pair.First] != table.Blocks[pair.Second]),
        trims,
        TravelGoal.LengthMm(table, order))
    {
        DriftRatio = table.Request.Shift?.RatioOf(order),
    };

    private static IndexFloor Floor(PlanningTable table)
    {
        var index = table.Costs.IndexOnly();
        var layers = CycleBound.Of(new(index, table.Precedence, table.Seed));
        var colors = Math.Max(layers, OrderSearch.CostBoundOf(table.Problem(index)));
        return new(Certificates.Rounded(layers, 4), Certificates.Rounded(colors, 4));
    }

    /// <summary>Empty when the proposed order is used.</summary>
    private static string WhyKept(SewOrderRequest request, bool nothingFound, long gain, bool losesWarn)
    {
        if (request.Settled is { } settled)
            return settled.Order is null ? settled.Because : "";
        if (!request.Reading.OrderMayChange)
            return "The design could only be read coarsely.";
        if (request.HasUnknownRecords)
            return "The tape holds records of unknown meaning; such a tape is never re-sequenced.";
        if (nothingFound)
            return "No order of these elements is better.";
        if (request.Mode == SewOrderMode.AsReceived)
            return "The ticket asks for the received order.";
        if (request.OrderMattersNot is { } because)
            return because;
        if (request.Mode == SewOrderMode.Always || gain >= request.Limits.BetterBy * OrderCosts.Scale || losesWarn)
            return "";
        var points = Math.Round(100.0 * gain / OrderCosts.Scale, 1, MidpointRounding.AwayFromZero);
        return FormattableString.Invariant($"The best order found is better by {points:0.0} points; a new tape is worth it from {100 * request.Limits.BetterBy:0.#} points on.");
    }
}
