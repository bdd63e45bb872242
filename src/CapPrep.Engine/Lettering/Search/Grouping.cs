namespace CapPrep.Engine.Lettering.Search;

/// <summary>Puts limbs together that lie over each other or are sewn in one stroke: letters with their dots and accents.</summary>
internal static class Grouping
{
    // Limbs of one letter share this much of the narrower one's way along the line, percent.
    private const int Overlap = 30;

    /// <summary>From left to right.</summary>
    /// <param name="limbs">With the lean of the letters taken out.</param>
    /// <param name="byChain">Limbs of one stroke stay together; not so in handwriting, where one stroke is a whole word.</param>
    public static IReadOnlyList<Group> Of(IReadOnlyList<Standing> limbs, bool byChain)
    {
        var group = Enumerable.Range(0, limbs.Count).ToArray();
        for (var one = 0; one < limbs.Count; one++)
        {
            for (var other = 0; other < one; other++)
            {
                if (Belong(limbs[one], limbs[other], byChain))
                    Join(group, one, other);
            }
        }

        return
        [
            .. limbs.Select((limb, index) => (Limb: limb, Root: Root(group, index)))
                .GroupBy(item => item.Root, item => item.Limb)
                .Select(Made)
                .OrderBy(made => made.Reach.From).ThenBy(made => made.Limbs[0].Limb.Index),
        ];
    }

    private static Group Made(IEnumerable<Standing> limbs)
    {
        Standing[] sorted = [.. limbs.OrderBy(limb => limb.Limb.Stitches.First)];
        return new(sorted, sorted.Select(limb => limb.Reach).Aggregate((sum, reach) => sum.Union(reach)));
    }

    private static bool Belong(Standing one, Standing other, bool byChain)
    {
        if (byChain && one.Limb.Chain == other.Limb.Chain)
            return true;
        var shared = Math.Min(one.Reach.To, other.Reach.To) - Math.Max(one.Reach.From, other.Reach.From);
        return shared >= 0 && 100L * shared >= Overlap * (long)Math.Min(one.Reach.Width, other.Reach.Width);
    }

    private static int Root(int[] group, int item)
    {
        while (group[item] != item)
            item = group[item] = group[group[item]];
        return item;
    }

    private static void Join(int[] group, int one, int other)
    {
        var (first, second) = (Root(group, one), Root(group, other));
        group[Math.Max(first, second)] = Math.Min(first, second);
    }
}
