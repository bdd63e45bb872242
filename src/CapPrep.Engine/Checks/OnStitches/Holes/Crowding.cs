using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>Counts how many of some needle points lie in a circle about each of them.</summary>
internal static class Crowding
{
    /// <summary>
    /// Counts, each point its own one included, in the order of <paramref name="some"/>. One sweep up the design for
    /// each level of the circle: the time grows with the number of points and not with how close they lie.
    /// </summary>
    /// <param name="points">The design.</param>
    /// <param name="some">Penetrations counted from 0.</param>
    /// <param name="radius">Of the circle, tape units; its edge is inside.</param>
    internal static int[] Of(CapPoints points, IReadOnlyList<int> some, int radius)
    {
        int[] order = [.. Enumerable.Range(0, some.Count).OrderBy(i => KeyOf(points.At(some[i])))];
        long[] keys = [.. order.Select(i => KeyOf(points.At(some[i])))];
        var counts = new int[some.Count];
        for (var level = -radius; level <= radius; level++)
        {
            var half = (int)Math.Sqrt((radius * radius) - (level * level));
            var (from, to) = (0, 0);
            foreach (var i in order)
            {
                var middle = points.At(some[i]) + new TapePoint(0, level);
                while (from < keys.Length && keys[from] < KeyOf(middle - new TapePoint(half, 0)))
                    from++;
                while (to < keys.Length && keys[to] <= KeyOf(middle + new TapePoint(half, 0)))
                    to++;
                counts[i] += to - from;
            }
        }

        return counts;
    }

    private static long KeyOf(TapePoint point) => ((long)point.Y << 32) + point.X;
}
