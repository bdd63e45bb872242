using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using CapPrep.FaultCorpus;
using CapPrep.TestKit.Faults;
using Xunit;

namespace CapPrep.Engine.Tests.Corpus;

/// <summary>What is said of a design does not hang on how it is stored, and a mended fault takes its finding along.</summary>
public sealed class SameWorkTests
{
    // Every test looks at some of the tapes, all tests together at all.
    private const int Tests = 6;

    private static readonly Lazy<IReadOnlyList<(CorpusTape Tape, IReadOnlyList<Finding> Said)>> Tapes = new(() =>
    [
        .. Made().AsParallel().AsOrdered().Select(tape => (tape, Findings(tape))),
    ]);

    private static IEnumerable<CorpusTape> Made() =>
    [
        .. FaultCorpus.Corpus.Families.Select(family => FaultCorpus.Corpus.Clean(family, 3)),
        .. FaultCorpus.Corpus.Rules.Where(FaultRun.Known.Contains)
            .Where(rule => !rule.StartsWith("tape.", StringComparison.Ordinal))
            .Select(rule => FaultCorpus.Corpus.Planted(rule, 3).Bad),
    ];

    [Fact]
    public void In_a_mirror_the_same_is_said_of_mirrored_places() =>
        Differences(0, tape => tape.Mirrored(), place => new(-place.Right, place.Bottom, -place.Left, place.Top)).AndNothingElse("mirror");

    [Fact]
    public void Begun_at_another_place_the_same_is_said() =>
        Differences(1, tape => tape.Ticket.CenterBy == "box" ? tape.Shifted(137, -58) : null, place => place).AndNothingElse("place");

    [Fact]
    public void Stored_upside_down_the_same_is_said() => Differences(2, tape => tape.Turned(), place => place).AndNothingElse("turned");

    [Fact]
    public void With_other_jumps_the_same_is_said() => Differences(3, tape => tape.Rerecorded(), place => place, "place.travel-outside").AndNothingElse("jumps");

    [Fact]
    public void With_other_thread_names_the_same_is_said() => Differences(4, tape => tape.Renamed(), place => place).AndNothingElse("names");

    [Fact]
    public void With_one_more_trim_the_same_is_said() =>
        Differences(5, tape => tape.Split(), null, "stitch.no-tie", "stitch.loose-travel").AndNothingElse("trim");

    [Fact]
    public void Letters_sewn_the_other_way_give_the_same()
    {
        string[] families = ["three lines", "wide line", "crest over tagline", "arc text"];
        families.Select(family => (FaultCorpus.Corpus.Clean(family, 3), FaultCorpus.Corpus.CleanReversed(family, 3)))
            .SelectMany(pair => Loud(Findings(pair.Item2)).Except(Loud(Findings(pair.Item1))).Select(said => $"{pair.Item1.Name}: {said}"))
            .AndNothingElse("letters");
    }

    [Fact]
    public void Mending_the_fault_takes_its_finding_away_and_nothing_else()
    {
        var wrong = FaultCorpus.Corpus.Rules.Where(FaultRun.Known.Contains)
            .AsParallel()
            .AsOrdered()
            .Select(rule => FaultCorpus.Corpus.Planted(rule, 5))
            .SelectMany(Unmended);

        wrong.AndNothingElse("mended");
    }

    private static IEnumerable<string> Unmended(TapePair pair)
    {
        var fault = pair.Bad.Truth.Fault!;
        var (bad, good) = (Findings(pair.Bad), Findings(pair.Good));
        var gone = Loud(bad).Except(Loud(good)).Select(said => said.Split(' ')[0]).Except([fault.Rule, .. fault.Companions]).ToList();
        var least = Enum.Parse<Severity>(fault.AtLeast, ignoreCase: true);
        if (good.Any(finding => finding.Rule == fault.Rule && finding.Severity >= least && finding.Places.Any(place => place.At == PlaceKind.CapFront)))
            yield return $"{pair.Good.Name}: {fault.Rule} is still said";
        if (gone.Count > 0)
            yield return $"{pair.Bad.Name}: also {string.Join(", ", gone)}";
    }

    private static IReadOnlyList<string> Differences(
        int test, Func<CorpusTape, CorpusTape?> change, Func<BoxMm, BoxMm>? place, params string[] butFor) =>
    [
        .. Tapes.Value.Where((_, k) => k % Tests == test || k % Tests == (test + 3) % Tests)
            .AsParallel()
            .AsOrdered()
            .Select(made => (made.Tape, made.Said, Changed: change(made.Tape)))
            .Where(made => made.Changed is not null)
            .SelectMany(made => Differences(made.Said, Findings(made.Changed!), place)
                .Where(said => !butFor.Contains(said.Split(' ')[0]))
                .Select(said => $"{made.Tape.Name}: {said}")),
    ];

    private static IEnumerable<string> Differences(IReadOnlyList<Finding> before, IReadOnlyList<Finding> after, Func<BoxMm, BoxMm>? place) =>
    [
        .. Loud(before).Except(Loud(after)),
        .. Loud(after).Except(Loud(before)),
        .. place is null ? [] : Moved(before, after, place),
    ];

    /// <summary>Warns and holds whose places do not lie where they should.</summary>
    private static IEnumerable<string> Moved(
        IReadOnlyList<Finding> before, IReadOnlyList<Finding> after, Func<BoxMm, BoxMm> place)
    {
        foreach (var finding in before.Where(finding => finding.Severity >= Severity.Warn))
        {
            var other = after.FirstOrDefault(found => found.Rule == finding.Rule && found.Severity == finding.Severity);
            var wanted = finding.Places.Select(found => found.BoxMm).OfType<BoxMm>().Select(place).ToList();
            var given = other?.Places.Select(found => found.BoxMm).OfType<BoxMm>().ToList() ?? [];
            if (wanted.Any(box => !given.Any(found => Near(box, found))))
                yield return $"{finding.Rule} lies elsewhere";
        }
    }

    private static bool Near(BoxMm a, BoxMm b) =>
        Math.Abs(a.Left - b.Left) < 1.5 && Math.Abs(a.Right - b.Right) < 1.5 && Math.Abs(a.Bottom - b.Bottom) < 1.5 && Math.Abs(a.Top - b.Top) < 1.5;

    private static IEnumerable<string> Loud(IReadOnlyList<Finding> findings) => findings
        .Where(finding => finding.Severity >= Severity.Warn && finding.State != FindingState.Introduced)
        .Select(finding => $"{finding.Rule} {finding.Severity}");

    private static IReadOnlyList<Finding> Findings(CorpusTape tape) => CapPrepper.Prepare(CorpusOrder.Request(tape)).Findings;
}
