using System.Globalization;
using CapPrep.FaultCorpus;
using CapPrep.TestKit.Campaigns;

namespace CapPrep.TestKit.Faults;

/// <summary>Runs the fault corpus and prints what was found, missed and cried wolf about.</summary>
public static class FaultCampaign
{
    // Development looks at lower numbers; what the campaign shows, nobody has tuned to.
    private const int FirstNumber = 100_000;

    private const int TwinsEach = 10;

    /// <param name="options"><c>--per-rule N</c>, <c>--clean N</c>, <c>--from N</c> (first number), <c>--only RULE,RULE</c>, <c>--curve N</c> (twins at each distance).</param>
    public static CampaignReport Run(IReadOnlyList<string> options, Action<string> say)
    {
        var plan = new FaultPlan(Number(options, "--per-rule", 300), Number(options, "--clean", 1000), Number(options, "--from", FirstNumber))
        {
            Only = Text(options, "--only")?.Split(',') ?? [],
        };
        var (clean, read) = FaultRun.Clean(plan);
        var faulty = FaultRun.Faulty(plan);
        IReadOnlyList<Judged> twins = plan.Only.Count > 0 ? [] : FaultRun.Twins(plan, Math.Min(TwinsEach, plan.PerRule));
        var table = FaultTable.Of([.. clean, .. faulty], FaultRun.Known, Corpus.Rules);
        foreach (var line in table.Lines())
            say(line);
        SayTwins(twins, say);
        SayReading(read, say);
        SayCurve(plan, Number(options, "--curve", 10), say);
        return new([], [.. Faults(clean, faulty, twins)]);
    }

    /// <summary>Everything that is not as it should be, by the name it can be made again from.</summary>
    public static IEnumerable<string> Faults(params IReadOnlyList<Judged>[] judged) => judged.SelectMany(tapes => tapes).SelectMany(Of);

    private static IEnumerable<string> Of(Judged tape)
    {
        if (tape.Rule is not null && !tape.Found)
            yield return $"missed{(tape.Elsewhere ? " (elsewhere)" : "")}: {tape.Rule}, {tape.Tape.Name}";
        foreach (var alarm in tape.Alarms)
            yield return $"false: {alarm}, {tape.Tape.Name}";
    }

    private static void SayTwins(IReadOnlyList<Judged> twins, Action<string> say)
    {
        say("Twins of designs that only look wrong");
        foreach (var family in twins.GroupBy(twin => (twin.Tape.Family, twin.Rule)))
            say($"  {family.Key.Family,-52} {family.Key.Rule,-24} {family.Count(twin => twin.Found)} of {family.Count()}");
    }

    private static void SayReading(IReadOnlyDictionary<string, ReadingShare> read, Action<string> say)
    {
        say("Share of stitches read as the right class, and as the right element");
        foreach (var (family, share) in read.OrderBy(family => family.Key, StringComparer.Ordinal))
            say(string.Create(CultureInfo.InvariantCulture, $"  {family,-52} {share.ClassShare:0.000} {share.ElementShare:0.000}"));
        var all = read.Values.Aggregate(default(ReadingShare), (sum, share) => sum + share);
        say(string.Create(CultureInfo.InvariantCulture, $"  {"all",-52} {all.ClassShare:0.000} {all.ElementShare:0.000}"));
    }

    private static void SayCurve(FaultPlan plan, int each, Action<string> say)
    {
        if (each == 0)
            return;
        say("Share of twins reported near the limit; distance as a share of the limit, above 0 on the good side");
        foreach (var rule in FaultRun.Detection(plan, each).GroupBy(point => point.Rule))
        {
            var points = rule.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.Distance:+0.00;-0.00}: {point.Share:0.0}"));
            say($"  {rule.Key,-26} {string.Join("  ", points)}");
        }
    }

    private static int Number(IReadOnlyList<string> options, string name, int usual) =>
        Text(options, name) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;

    private static string? Text(IReadOnlyList<string> options, string name) =>
        options.SkipWhile(option => option != name).Skip(1).FirstOrDefault();
}
