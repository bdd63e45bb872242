using CapPrep.Engine;
using CapPrep.Engine.Trade;
using CapPrep.FaultCorpus;

namespace CapPrep.TestKit.Faults;

/// <summary>How much of the corpus is run.</summary>
/// <param name="PerRule">Tapes with a planted fault for each rule.</param>
/// <param name="Clean">Clean tapes, spread over the layouts and the designs that look wrong.</param>
/// <param name="FirstNumber">First number of every family: other numbers, other tapes.</param>
public sealed record FaultPlan(int PerRule, int Clean, int FirstNumber)
{
    /// <summary>Only these rules; empty: all.</summary>
    public IReadOnlyList<string> Only { get; init; } = [];
}

/// <summary>Runs the corpus through the engine.</summary>
public static class FaultRun
{
    /// <summary>Rules that the rule book has.</summary>
    public static IReadOnlySet<string> Known { get; } = Embedded.HouseBook.Rows.Select(row => row.Rule).ToHashSet(StringComparer.Ordinal);

    public static IReadOnlyList<Judged> Faulty(FaultPlan plan)
    {
        var rules = Corpus.Rules.Where(rule => Known.Contains(rule) && (plan.Only.Count == 0 || plan.Only.Contains(rule)));
        return Judge([.. rules.SelectMany(rule => Numbers(plan, plan.PerRule).Select(number => new Func<CorpusTape>(() => Corpus.Planted(rule, number).Bad)))]);
    }

    /// <summary>Clean tapes with how well each layout was read.</summary>
    public static (IReadOnlyList<Judged> Judged, IReadOnlyDictionary<string, ReadingShare> Read) Clean(FaultPlan plan)
    {
        var makers = Makers(plan).Take(plan.Clean).ToList();
        var all = new (Judged Judged, ReadingShare Share)[makers.Count];
        Each(makers.Count, k =>
        {
            var tape = makers[k]();
            var prepared = CapPrepper.Prepare(CorpusOrder.Request(tape));
            all[k] = (Judged.Of(tape, prepared.Findings), ReadingShare.Of(tape, prepared));
        });
        var read = all.GroupBy(one => one.Judged.Tape.Family)
            .ToDictionary(family => family.Key, family => family.Select(one => one.Share).Aggregate((sum, share) => sum + share));
        return ([.. all.Select(one => one.Judged)], read);
    }

    /// <summary>The twins of the designs that look wrong.</summary>
    public static IReadOnlyList<Judged> Twins(FaultPlan plan, int each) => Judge(
        [.. Corpus.LookWrong.Where(design => Known.Contains(design.Rule)).SelectMany(design => Numbers(plan, each)
            .Select(number => new Func<CorpusTape>(() => Corpus.Looking(design.Number, number).Bad)))]);

    /// <summary>Share of twins reported at each distance from the limit, as a share of it; above 0 is the good side.</summary>
    public static IEnumerable<(string Rule, double Distance, double Share)> Detection(FaultPlan plan, int each)
    {
        double[] distances = [-0.2, -0.1, -0.05, -0.02, 0.02, 0.05, 0.1, 0.2];
        foreach (var rule in Corpus.Measured.Where(Known.Contains))
        {
            foreach (var distance in distances)
            {
                var way = Corpus.IsUpper(rule) ? -distance : distance;
                var judged = Judge([.. Numbers(plan, each).Select(number => new Func<CorpusTape>(() => Corpus.Near(rule, way, number)))]);
                yield return (rule, distance, (double)judged.Count(tape => tape.Found) / each);
            }
        }
    }

    private static IReadOnlyList<Judged> Judge(IReadOnlyList<Func<CorpusTape>> makers)
    {
        var judged = new Judged[makers.Count];
        Each(makers.Count, k => judged[k] = Judged.Of(makers[k]()));
        return judged;
    }

    /// <summary>One round holds every layout twice and every design that looks wrong once: a good third of them is hard.</summary>
    private static IEnumerable<Func<CorpusTape>> Makers(FaultPlan plan)
    {
        for (var round = 0; ; round++)
        {
            var number = plan.FirstNumber + round;
            foreach (var family in Corpus.Families)
            {
                yield return () => Corpus.Clean(family, 2 * number);
                yield return () => Corpus.Clean(family, (2 * number) + 1);
            }

            foreach (var (design, _, _) in Corpus.LookWrong)
                yield return () => Corpus.Looking(design, number).Good;
        }
    }

    private static IEnumerable<int> Numbers(FaultPlan plan, int count) => Enumerable.Range(plan.FirstNumber, count);

    private static void Each(int count, Action<int> one) =>
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, one);
}
