using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Finds the limbs that stand on a base line side by side.</summary>
internal static class RunFinder
{
    // Limbs of a line have at least this share of the height of its tallest ones, and at most that, percent.
    private const int Lowest = 45;
    private const int Tallest = 160;

    // Bare cloth between letters, percent of their height.
    private const int LargestGap = 130;

    /// <summary>From left to right.</summary>
    /// <param name="limbs">Those that belong to no line yet.</param>
    /// <param name="curve">The base line.</param>
    /// <param name="height">Height of letters, sixteenths of a tape unit.</param>
    /// <param name="limb">One that must be among them.</param>
    public static IReadOnlyList<Standing> Run(IReadOnlyList<Limb> limbs, Curve curve, int height, int limb)
    {
        var near = Tolerance.Base(height);
        var standing = new List<Standing>();
        for (var k = 0; k < limbs.Count; k++)
        {
            var candidate = limbs[k];
            // What stands on the line has its middle between the line and the height of the tallest.
            if (curve.UpOf(candidate.Center) * Fine.PerTenth is var up && (up < 0 || up > height))
                continue;
            if (Stand(candidate, curve) is { } stands && Math.Abs(stands.Reach.Bottom) <= near && IsInRange(stands.Reach.Height, height))
                standing.Add(stands);
        }

        return Connected([.. standing.OrderBy(one => one.Reach.From).ThenBy(one => one.Limb.Index)], height, limb);
    }

    public static Standing Stand(Limb limb, Curve curve, int lean = 0)
    {
        var frame = curve.At(limb.Center);
        return new(limb, frame.ReachOf(limb.Hull, lean), limb.IsTall ? frame.LeanOf(limb.DoubleAxis) : null);
    }

    private static bool IsInRange(int height, int of) => 100L * height >= Lowest * (long)of && 100L * height <= Tallest * (long)of;

    private static IReadOnlyList<Standing> Connected(IReadOnlyList<Standing> sorted, int height, int limb)
    {
        var (first, to) = (0, int.MinValue);
        var has = false;
        for (var k = 0; k < sorted.Count; k++)
        {
            if (k > 0 && 100L * (sorted[k].Reach.From - to) > LargestGap * (long)height)
            {
                if (has)
                    return [.. sorted.Skip(first).Take(k - first)];
                (first, to) = (k, int.MinValue);
            }

            to = Math.Max(to, sorted[k].Reach.To);
            has |= sorted[k].Limb.Index == limb;
        }

        return has ? [.. sorted.Skip(first)] : [];
    }
}
