using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>The smallest convex shape around points.</summary>
internal static class Hull
{
    /// <summary>Its corners counter-clockwise from the leftmost one; points on its sides are left out.</summary>
    public static IReadOnlyList<TapePoint> Of(IEnumerable<TapePoint> points)
    {
        TapePoint[] sorted = [.. points.Distinct().OrderBy(point => point.X).ThenBy(point => point.Y)];
        if (sorted.Length <= 2)
            return sorted;
        var lower = HalfOf(sorted);
        var upper = HalfOf([.. sorted.Reverse()]);
        return [.. lower.Take(lower.Count - 1), .. upper.Take(upper.Count - 1)];
    }

    private static List<TapePoint> HalfOf(TapePoint[] sorted)
    {
        var half = new List<TapePoint>(sorted.Length);
        foreach (var point in sorted)
        {
            while (half.Count >= 2 && Fine.Cross(half[^1] - half[^2], point - half[^1]) <= 0)
                half.RemoveAt(half.Count - 1);
            half.Add(point);
        }

        return half;
    }

    /// <summary>A corner of the one lies in the other, or no farther from it than given.</summary>
    public static bool AreNear(IReadOnlyList<TapePoint> one, IReadOnlyList<TapePoint> other, int distance) =>
        one.Any(corner => IsNear(corner, other, distance)) || other.Any(corner => IsNear(corner, one, distance));

    private static bool IsNear(TapePoint point, IReadOnlyList<TapePoint> hull, int distance)
    {
        var isInside = true;
        for (var k = 0; k < hull.Count; k++)
        {
            var edge = new Stretch(hull[k], hull[(k + 1) % hull.Count]);
            if (edge.DistanceSquared(point) <= distance * distance)
                return true;
            isInside &= Fine.Cross(edge.To - edge.From, point - edge.From) > 0;
        }

        return isInside;
    }
}
