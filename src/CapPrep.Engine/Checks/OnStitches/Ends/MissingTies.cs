using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Ends;

/// <summary>
/// Ends of thread at trims and color stops that are not held by short stitches (fact row L44) and come loose when the
/// cap is worn. Silent for a machine that ties by itself.
/// </summary>
internal static class MissingTies
{
    internal static readonly Check Check = new("stitch.no-tie", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (subject.Setup.Machine.AddsTies)
            return [];
        var strands = Interval.Strands(subject.Stitches);
        Interval[] ends =
        [
            .. strands.Skip(1).Select(strand => Begin(strand, rule))
                .Concat(strands.SkipLast(1).Select(strand => End(strand, rule)))
                .Where(end => end.Count > 1)
                .OrderBy(end => end.First),
        ];
        Interval[] loose = [.. ends.Where(end => !IsTied(end, subject.Stitches, rule))];
        var level = loose.Length > rule.Parameter("warnAboveShare") * ends.Length ? Severity.Warn : Severity.Note;
        return loose.Select(end => new Occurrence(subject.PlaceOf(end.First, end.Last)) { Level = level });
    }

    private static Interval Begin(Interval strand, RuleInForce rule) =>
        strand with { Last = Math.Min(strand.Last, strand.First + (int)rule.Parameter("stepsLookedAt")) };

    private static Interval End(Interval strand, RuleInForce rule) =>
        strand with { First = Math.Max(strand.First, strand.Last - (int)rule.Parameter("stepsLookedAt")) };

    /// <summary>Short stitches one behind the other; a single one may be the end of a row.</summary>
    private static bool IsTied(Interval end, StitchSequence stitches, RuleInForce rule)
    {
        var (longest, run, best) = ((long)(Fine.PerMillimeter * rule.Parameter("stepAtMostMm")), 0, 0);
        for (var point = end.First + 1; point <= end.Last; point++)
        {
            run = stitches.LengthOf(new(point - 1, point)) <= longest ? run + 1 : 0;
            best = Math.Max(best, run);
        }

        return best >= rule.Parameter("stepsAtLeast");
    }

    private static string Say(Report report) =>
        $"{Figure.Count(report.WorstFirst.Count, "end of thread is", "ends of thread are")} cut without a tie.";
}
