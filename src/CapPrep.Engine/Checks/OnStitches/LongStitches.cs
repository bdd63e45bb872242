using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>
/// Stitches so long that they snag on a cap that is worn. Satin is judged by its width elsewhere, so that of satin only
/// what is longer than one record's move along an axis counts. The needle-up way of jumps is no stitch. Silent for lines
/// and nets that only hold cloth and backing together, and for tapes whose stitches could not be told apart.
/// </summary>
internal static class LongStitches
{
    internal static readonly Check Check = new("stitch.long", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var steps = new Steps(subject, rule);
        return StitchRuns
            .Of(Enumerable.Range(1, subject.Stitches.Count - 1).Where(steps.IsLong))
            .Select(run => new Occurrence(subject.PlaceOf(run[0] - 1, run[^1]))
            {
                Measured = run.Max(steps.LengthMm),
                Times = run.Count,
            });
    }

    /// <summary>Counted are all that pass the mildest limit, so that is the one named first.</summary>
    private static string Say(Report report)
    {
        var count = Figure.Count(report.WorstFirst.Sum(one => one.Times), "stitch is", "stitches are");
        var says = $"{count} longer than {Figure.Mm(report.Mildest)}, the longest {Figure.Mm(report.Measured)}";
        return report.LimitValue > report.Mildest ? $"{says}, which is over {Figure.Mm(report.LimitValue)}." : $"{says}.";
    }

    private sealed class Steps(Subject subject, RuleInForce rule)
    {
        private readonly SpanMap _spans = SpanMap.Of(subject);
        private readonly HashSet<int> _holding = [.. HoldingSpans.Of(subject, rule).Select(span => span.First)];
        private readonly double _anywhereMm = rule.Parameter("anywhereAboveMm");

        internal double LengthMm(int point) => _spans.StepMm(point);

        internal bool IsLong(int point) =>
            _spans.IsStep(point)
            && LengthMm(point) is var length
            && rule.Limits.PassedBy(length) is not null
            && (length > _anywhereMm || (_spans.KnowsClasses && !_spans.IsStepOf(StitchClass.Satin, point)))
            && !_holding.Contains(_spans.At(point).First);
    }
}
