namespace CapPrep.Engine.Lettering.Letters;

/// <summary>The heights that letters of a line reach, sixteenths of a tape unit.</summary>
/// <param name="Low">That of the smaller letters.</param>
/// <param name="High">That of the taller ones; the same when all are alike.</param>
internal sealed record Levels(int Low, int High)
{
    // Capitals are so much taller than lower case, percent; accents and small capitals lie outside.
    private const int LeastRise = 115;
    private const int LargestRise = 175;

    /// <summary>The one that most tops reach, and the one most of the others reach, if it is so much higher or lower.</summary>
    /// <param name="tops">At least one, above 0.</param>
    public static Levels Of(IReadOnlyList<int> tops)
    {
        var main = Fullest(tops);
        int[] others = [.. tops.Where(top => IsPair(top, main))];
        if (others.Length == 0)
            return new(main, main);
        var second = Fullest(others);
        return new(Math.Min(main, second), Math.Max(main, second));
    }

    public bool HasTwo => High > Low;

    public bool Has(int top) => Math.Abs(top - Low) <= Tolerance.Top(Low) || Math.Abs(top - High) <= Tolerance.Top(High);

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
