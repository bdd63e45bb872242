using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Finds the lines of letters among the limbs of one thread and make.</summary>
internal static class LineSearch
{
    private const int MostLines = 12;

    // Seeds that are read in full.
    private const int MostReadings = 80;

    /// <summary>The best line first; no limb is in two.</summary>
    public static IReadOnlyList<Candidate> Find(LimbSet set)
    {
        var found = new List<Candidate>();
        var used = new bool[set.Limbs.Count];
        foreach (var line in Accepted(set))
        {
            if (found.Count == MostLines)
                break;
            if (line.Limbs.Any(limb => used[limb.Limb.Index]))
                continue;
            found.Add(line);
            foreach (var limb in line.Limbs)
                used[limb.Limb.Index] = true;
        }

        return found;
    }

    /// <summary>Those that no better line of the other kind stands against.</summary>
    private static IEnumerable<Candidate> WithoutWorse(IReadOnlyList<Candidate> lines)
    {
        var straight = lines.Where(line => line.Curve is StraightCurve).ToArray();
        var round = lines.Where(line => line.Curve is RoundCurve).ToArray();
        var pairs = from arc in round from line in straight where arc.Shares(line) select arc.IsBetterThan(line) ? line : arc;
        return lines.Except(pairs);
    }

    /// <summary>Those with the most letters on line and level first; of equals, the one that fits better.</summary>
    private static IEnumerable<Candidate> Accepted(LimbSet set)
    {
        var (maker, acceptance) = (new CandidateMaker(set.Limbs), new Acceptance(set));
        var (accepted, rejected) = (new List<Candidate>(), new List<Candidate>());
        var readings = 0;
        foreach (var vote in ByVotes(set.Limbs))
        {
            if (accepted.Any(line => IsAlike(line, vote) && Holds(line, vote.Run, 67)) || rejected.Any(line => IsAlike(line, vote) && Holds(line, vote.Run, 100)))
                continue;
            if (readings++ == MostReadings)
                break;
            if (maker.Of(vote.Seed) is { } read)
                (acceptance.Accepts(read) ? accepted : rejected).Add(read);
        }

        return WithoutWorse(accepted).OrderByDescending(line => line.Score).ThenBy(line => line.Residual);
    }

    private static bool IsAlike(Candidate line, Vote vote) => line.Curve is RoundCurve == vote.Seed.Curve is RoundCurve;

    /// <summary>So much of a run, percent, stands on the line already.</summary>
    private static bool Holds(Candidate line, IReadOnlyList<Standing> run, int percent)
    {
        var standing = line.Limbs.Where(limb => Math.Abs(limb.Reach.Bottom) <= Tolerance.Base(line.Levels.High)).Select(limb => limb.Limb.Index).ToHashSet();
        return 100 * run.Count(limb => standing.Contains(limb.Limb.Index)) >= percent * run.Count;
    }

    /// <summary>
    /// Those with the most limbs on their line first; of equals, straight lines and earlier limbs. Of several under the
    /// same limbs only the first.
    /// </summary>
    private static IEnumerable<Vote> ByVotes(IReadOnlyList<Limb> limbs)
    {
        var votes = new List<Vote>();
        var seen = new HashSet<(bool, ulong)>();
        foreach (var seed in SeedMaker.Of(limbs))
        {
            var run = RunFinder.Run(limbs, seed.Curve, seed.Height, seed.Limb);
            if (run.Count >= 3 && seen.Add((seed.Curve is RoundCurve, KeyOf(run))))
                votes.Add(new(seed, run, run.Count + run.Count(limb => Math.Abs(limb.Reach.Top - seed.Height) <= Tolerance.Top(seed.Height))));
        }

        return votes.OrderByDescending(vote => vote.Count);
    }

    private static ulong KeyOf(IEnumerable<Standing> run) =>
        run.Aggregate(Fnv1a.Basis, (key, standing) => Fnv1a.Of(key, standing.Limb.Index));

    /// <summary>A seed with the limbs that stand on its line.</summary>
    private sealed record Vote(Seed Seed, IReadOnlyList<Standing> Run, int Count);
}
