namespace CapPrep.Engine.Sequence.Cost;

/// <summary>How far an order departs from what the order rules want; shares from 0 to 1, to four decimals.</summary>
/// <param name="Decided">False when no pair of elements is there for order to decide: then the index is 0.</param>
/// <param name="OrderIndex">Share of what order can still decide that is the wrong way round.</param>
/// <param name="OfHeight">The part of it where a lower element comes late.</param>
/// <param name="OfSeam">The part of it where an element nearer to the seam comes late.</param>
/// <param name="LineIndex">For every text line the share of its pairs that run inward.</param>
/// <param name="TaglineLate">Share of what should come after the tagline, by mass, that comes before it.</param>
public sealed record OrderShares(
    bool Decided,
    double OrderIndex,
    double OfHeight,
    double OfSeam,
    IReadOnlyList<double> LineIndex,
    double TaglineLate)
{
    public double LineIndexMax => LineIndex.Count == 0 ? 0 : LineIndex.Max();

    internal static OrderShares Of(OrderCosts costs, IReadOnlyList<int> order)
    {
        var place = Places(order);
        var (height, seam, late) = (0L, 0L, 0L);
        for (var first = 0; first < order.Count; first++)
        {
            for (var second = 0; second < order.Count; second++)
            {
                if (place[first] >= place[second])
                    continue;
                var wrong = costs.Wrong(first, second);
                if (wrong > 0 && costs.IsOfHeight(first, second))
                    height += wrong;
                else
                    seam += wrong;
                if (costs.DelaysTagline(first, second))
                    late += costs.MassOf(first, second);
            }
        }

        return new(
            costs.Worst > 0,
            Share(height + seam, costs.Worst),
            Share(height, costs.Worst),
            Share(seam, costs.Worst),
            [.. costs.Lines.Select(line => Share(line.Wrong(place), line.Weight))],
            Share(late, costs.TaglineWorst));
    }

    internal static int[] Places(IReadOnlyList<int> order)
    {
        var places = new int[order.Count];
        for (var at = 0; at < order.Count; at++)
            places[order[at]] = at;
        return places;
    }

    private static double Share(long part, long whole) =>
        whole == 0 ? 0 : Math.Round((double)part / whole, 4, MidpointRounding.AwayFromZero);
}
