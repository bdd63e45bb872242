namespace CapPrep.Engine.Sequence.Search;

/// <summary>The least order cost found with exactly so many trims.</summary>
internal readonly record struct CurvePoint(int Trims, long Cost);

/// <summary>
/// What fewer trims cost: points with rising trims and falling cost, each with its order.
/// </summary>
/// <param name="Points">At least one.</param>
/// <param name="Orders">One order per point.</param>
/// <param name="IsExact">No order lies below the curve.</param>
internal sealed record Curve(IReadOnlyList<CurvePoint> Points, IReadOnlyList<int[]> Orders, bool IsExact)
{
    /// <summary>The least sum of cost and trim price on the curve.</summary>
    internal long LeastSum(long trimPrice) => Points.Min(point => point.Cost + (trimPrice * point.Trims));

    /// <summary>The order with that sum.</summary>
    internal int[] BestAt(long trimPrice) =>
        Points.Zip(Orders).MinBy(found => found.First.Cost + (trimPrice * found.First.Trims)).Second;

    /// <summary>Only the points that cost less than every point with fewer trims.</summary>
    internal static Curve Of(IEnumerable<(CurvePoint Point, int[] Order)> found, bool isExact)
    {
        var kept = new List<(CurvePoint Point, int[] Order)>();
        foreach (var one in found.OrderBy(one => one.Point.Trims).ThenBy(one => one.Point.Cost))
        {
            if (kept.Count == 0 || one.Point.Cost < kept[^1].Point.Cost)
                kept.Add(one);
        }

        return new([.. kept.Select(one => one.Point)], [.. kept.Select(one => one.Order)], isExact);
    }
}
