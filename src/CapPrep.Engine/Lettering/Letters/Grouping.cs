using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Letters;

/// <summary>Puts limbs together that lie over each other or are sewn in one stroke: letters with their dots and accents.</summary>
internal static class Grouping
{
    // Limbs of one letter share this much of the narrower one's way along the line, percent.
    private const int Overlap = 30;

    // What touches: 0.1 mm.
    private const int Touch = Fine.PerTenth;

    // The strokes themselves come as near as 0.3 mm, tape units.
    private const int Near = 3;

    // A letter is at most so wide, percent of the height of capitals.
    private const int WidestLetter = 125;

    // Wider than this, one stroke is a word.
    private const int LeastWord = 220;

    // Penetrations that lead from one stroke of a letter to the next, underlay included.
    private const int FewBetween = 30;

    /// <summary>
    /// From left to right. Limbs of one stroke stay together, but not in handwriting, where one stroke is a whole word.
    /// </summary>
    /// <param name="limbs">With the lean of the letters taken out.</param>
    /// <param name="height">Of capitals, sixteenths of a tape unit.</param>
    public static IReadOnlyList<Group> Letters(IReadOnlyList<Standing> limbs, int height)
    {
        var byChain = Touching(Of(limbs, byChain: true), height);
        return byChain.Any(group => IsWord(group, height)) ? Of(limbs, byChain: false) : byChain;
    }

    private static bool IsWord(Group group, int height) => 100L * group.Reach.Width > LeastWord * (long)height;

    private static IReadOnlyList<Group> Of(IReadOnlyList<Standing> limbs, bool byChain)
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

    /// <summary>
    /// With the strokes of one letter joined that only touch, such as stem and arch: sewn one behind the other without
    /// a gap, and together no wider than high by much.
    /// </summary>
    private static IReadOnlyList<Group> Touching(IReadOnlyList<Group> groups, int height)
    {
        var joined = new List<Group>();
        foreach (var next in groups)
        {
            if (joined is [.., var before] && AreOne(before, next, height))
                joined[^1] = Made(before.Limbs.Concat(next.Limbs));
            else
                joined.Add(next);
        }

        return joined;
    }

    private static bool AreOne(Group before, Group next, int height) =>
        next.Reach.From - before.Reach.To <= Touch
        && 100L * before.Reach.Union(next.Reach).Width <= WidestLetter * (long)height
        && before.Limbs.Any(limb => next.Limbs.Any(other => AreSewnTogether(limb, other)));

    private static bool AreSewnTogether(Standing one, Standing other)
    {
        var (first, second) = one.Limb.First <= other.Limb.First ? (one, other) : (other, one);
        return second.Limb.First - first.Limb.Last <= FewBetween && Hull.AreNear(one.Limb.Hull, other.Limb.Hull, Near);
    }

    private static Group Made(IEnumerable<Standing> limbs)
    {
        Standing[] sorted = [.. limbs.OrderBy(limb => limb.Limb.First).ThenBy(limb => limb.Limb.Index)];
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
