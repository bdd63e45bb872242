using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>
/// The table of what trims buy: the received order, the best one with no more trims, and every number of trims that
/// lowers the order cost by at least two points.
/// </summary>
internal static class TradeOffs
{
    private const long Step = OrderCosts.Scale / 50;
    private const int MostRows = 10;

    internal static IReadOnlyList<TradeOff> Of(PlanningTable table, OrderSearch search, Choice choice, int mostTrims)
    {
        var isKept = choice.KeptBecause.Length > 0;
        var rows = new List<TradeOff>
        {
            Row(table, table.Received, choice.Received.Trims, CertificateClaim.Found, isKept, isKept ? "" : "A better order was found."),
        };
        foreach (var point in Listed(search.Points, choice.Received, choice.Best))
        {
            var claim = search.IsExact ? CertificateClaim.Proven : CertificateClaim.Bounded;
            rows.Add(Row(table, search.OrderWith(point.Trims), point.Trims, claim, point == choice.Best && !isKept, WhyNot(point, choice, mostTrims)));
        }

        if (choice.LeastDrift is { } still)
            rows.Add(Row(table, still, choice.Received.Trims, CertificateClaim.Found, false, "It moves the cloth least, but departs from the order rules."));

        return rows;
    }

    /// <summary>What was chosen from.</summary>
    /// <param name="Best">The best order within the trims allowed; null when the received one is no worse.</param>
    /// <param name="KeptBecause">Why the received order is used; empty when it is not.</param>
    /// <param name="LeastDrift">The order in which the cloth moves least, where that matters.</param>
    internal readonly record struct Choice(CurvePoint Received, CurvePoint? Best, string KeptBecause, int[]? LeastDrift);

    private static List<CurvePoint> Listed(IReadOnlyList<CurvePoint> points, CurvePoint received, CurvePoint? chosen)
    {
        var listed = new List<CurvePoint>();
        foreach (var point in points.Where(point => !IsNoBetter(point, received)))
        {
            if (point == chosen || IsBestWithoutMore(points, point, received)
                || (point.Trims > received.Trims && (listed.Count == 0 || listed[^1].Cost - point.Cost >= Step)))
                listed.Add(point);
        }

        while (listed.Count > MostRows - 2)
            listed.RemoveAt(listed.FindLastIndex(point => point != chosen));
        return listed;
    }

    private static bool IsNoBetter(CurvePoint point, CurvePoint received) =>
        point.Trims >= received.Trims && point.Cost >= received.Cost;

    private static bool IsBestWithoutMore(IReadOnlyList<CurvePoint> points, CurvePoint point, CurvePoint received) =>
        point.Trims <= received.Trims && points.All(other => other.Trims > received.Trims || other.Cost >= point.Cost);

    private static string WhyNot(CurvePoint point, Choice choice, int mostTrims) =>
        point == choice.Best ? choice.KeptBecause
        : point.Trims > mostTrims ? "More trims than this order allows."
        : choice.Best is { } better && point.Trims <= better.Trims ? "Fewer trims, but a worse order."
        : "The trims cost more than they gain.";

    private static TradeOff Row(PlanningTable table, IReadOnlyList<int> order, int trims, CertificateClaim claim, bool chosen, string whyNot)
    {
        var shares = OrderShares.Of(table.Costs, order);
        var budget = table.Request.Budget;
        var extra = trims - budget.ReceivedTrims;
        var seconds = Math.Round(extra * budget.TrimSeconds, 1, MidpointRounding.AwayFromZero);
        return new(
            ExtraColorChanges: 0,
            extra,
            shares.OrderIndex,
            shares.LineIndexMax,
            shares.TaglineLate,
            seconds,
            Math.Round(seconds * budget.Loads / 60, 1, MidpointRounding.AwayFromZero),
            claim,
            chosen,
            whyNot)
        {
            DriftRatio = table.Request.Shift?.RatioOf(order),
        };
    }
}
