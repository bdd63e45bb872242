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

    internal static IReadOnlyList<TradeOff> Of(
        PlanningTable table, OrderSearch search, CurvePoint received, CurvePoint? chosen, int mostTrims)
    {
        var rows = new List<TradeOff> { Row(table, table.Received, received.Trims, CertificateClaim.Found, chosen is null, chosen is null ? "" : "A better order was found.") };
        foreach (var point in Listed(search.Points, received, chosen))
        {
            var claim = search.IsExact ? CertificateClaim.Proven : CertificateClaim.Bounded;
            rows.Add(Row(table, search.OrderWith(point.Trims), point.Trims, claim, point == chosen, WhyNot(point, chosen, mostTrims)));
        }

        return rows;
    }

    private static List<CurvePoint> Listed(IReadOnlyList<CurvePoint> points, CurvePoint received, CurvePoint? chosen)
    {
        var listed = new List<CurvePoint>();
        foreach (var point in points)
        {
            if (point == chosen || IsBestWithoutMore(points, point, received)
                || (point.Trims > received.Trims && (listed.Count == 0 || listed[^1].Cost - point.Cost >= Step)))
                listed.Add(point);
        }

        while (listed.Count > MostRows - 1)
            listed.RemoveAt(listed.FindLastIndex(point => point != chosen));
        return listed;
    }

    private static bool IsBestWithoutMore(IReadOnlyList<CurvePoint> points, CurvePoint point, CurvePoint received) =>
        point.Trims <= received.Trims && points.All(other => other.Trims > received.Trims || other.Cost >= point.Cost);

    private static string WhyNot(CurvePoint point, CurvePoint? chosen, int mostTrims) =>
        point == chosen ? ""
        : point.Trims > mostTrims ? "More trims than this order allows."
        : chosen is { } better && point.Trims > better.Trims ? "The trims cost more than they gain."
        : "Fewer trims, but a worse order.";

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
            whyNot);
    }
}
