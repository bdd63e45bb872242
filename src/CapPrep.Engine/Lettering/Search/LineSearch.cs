using CapPrep.Engine.Lettering.Limbs;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Finds the lines of letters among the limbs of one thread and make.</summary>
internal static class LineSearch
{
    internal static Action<string>? Debug;

    private const int MostLines = 12;

    // Seeds that are read in full.
    private const int MostReadings = 80;

    /// <summary>The best line first.</summary>
    public static IReadOnlyList<Candidate> Find(LimbSet set)
    {
        var found = new List<Candidate>();
        var used = new bool[set.Limbs.Count];
        var acceptance = new Acceptance(set.Limbs);
        var seen = new HashSet<(int, int, int)>();
        var readings = 0;
        foreach (var seed in ByVotes(set.Limbs))
        {
            if (found.Count == MostLines || readings == MostReadings)
                break;
            if (used[seed.Limb])
                continue;
            Limb[] free = [.. set.Limbs.Where(limb => !used[limb.Index])];
            if (new CandidateMaker(free).Of(seed) is not { } line)
                continue;
            if (!seen.Add((line.Letters[0].Group.Limbs[0].Limb.Index, line.Letters[^1].Group.Limbs[^1].Limb.Index, line.Limbs.Count())))
                continue;
            readings++;
            var why = acceptance.Fault(line);
            Debug?.Invoke($"    {set.Make} {set.Thread} seed {seed.Limb} h {seed.Height / 160.0:0.0} {line.Curve.GetType().Name} letters {line.Letters.Count} stand {line.Stand} levels {line.Levels.Low / 160.0:0.0} {line.Levels.High / 160.0:0.0} lean {line.Lean} len {line.Length / 160.0:0.0} res {line.Residual / 160.0:0.00}: {why ?? "OK"}");
            if (why is not null)
                continue;
            found.Add(line);
            foreach (var limb in line.Limbs)
                used[limb.Limb.Index] = true;
        }

        return found;
    }

    /// <summary>Those with the most limbs on their line first; of equals, straight lines and earlier limbs.</summary>
    private static IEnumerable<Seed> ByVotes(IReadOnlyList<Limb> limbs) =>
        from seed in SeedMaker.Of(limbs).Select((seed, index) => (Seed: seed, Index: index))
        let run = RunFinder.Run(limbs, seed.Seed.Curve, seed.Seed.Height, seed.Seed.Limb)
        where run.Count >= 3
        let votes = run.Count + run.Count(limb => Math.Abs(limb.Reach.Top - seed.Seed.Height) <= Tolerance.Top(seed.Seed.Height))
        orderby votes descending, seed.Index
        select seed.Seed;
}
