namespace CapPrep.Engine.Lettering.Letters;

/// <summary>The heights that letters of a line reach, sixteenths of a tape unit.</summary>
/// <param name="Low">That of the smaller letters.</param>
/// <param name="High">That of the taller ones; the same when all are alike.</param>
internal sealed record Levels(int Low, int High)
{
    // Capitals are so much taller than lower case, percent; accents and small capitals lie outside.
    private const int LeastRise = 115;
    private const int LargestRise = 175;

    // Ascenders end so far from each other at most, percent.
    private const int Ascenders = 8;

    // So many letters are lower where the others are capitals, percent.
    private const int LowerShare = 30;

    /// <summary>The one that most tops reach, and the one most of the others reach, if it is so much higher or lower.</summary>
    /// <param name="tops">At least one, above 0.</param>
    public static Levels Of(IReadOnlyList<int> tops)
    {
        var main = Fullest(tops);
        int[] others = [.. tops.Where(top => IsPair(top, main))];
        if (others.Length == 0)
            return new(main, main);
        var second = Fullest(others);
        return second > main || IsOften(second, tops) ? new(Math.Min(main, second), Math.Max(main, second)) : new(main, main);
    }

    public bool HasTwo => High > Low;

    /// <summary>About so high: as far from the taller ones as a t ends below a d.</summary>
    public bool IsNear(int top) => Has(top) || 100L * Math.Abs(top - High) <= Ascenders * (long)High;

    public bool Has(int top) => Math.Abs(top - Low) <= Tolerance.Top(Low) || Math.Abs(top - High) <= Tolerance.Top(High);

    /// <summary>One letter may stand out above the others; below them, one is a letter that was read in part.</summary>
    private static bool IsOften(int height, IReadOnlyList<int> tops) =>
        100 * tops.Count(top => Math.Abs(top - height) <= Tolerance.Top(height)) >= LowerShare * tops.Count;

    private static bool IsPair(int one, int other)
    {
        var (low, high) = (Math.Min(one, other), Math.Max(one, other));
        return 100L * high >= LeastRise * (long)low && 100L * high <= LargestRise * (long)low
            && high - low > Tolerance.Top(low) + Tolerance.Top(high);
    }

    /// <summary>The middle of the tops around the one with the most others near it; the lowest of equals.</summary>
    private static int Fullest(IReadOnlyList<int> tops)
    {
        int[] sorted = [.. tops.Order()];
        int[] best = [];
        foreach (var top in sorted)
        {
            int[] near = [.. sorted.Where(other => Math.Abs(other - top) <= Tolerance.Top(top))];
            if (near.Length > best.Length)
                best = near;
        }

        return best[best.Length / 2];
    }
}
