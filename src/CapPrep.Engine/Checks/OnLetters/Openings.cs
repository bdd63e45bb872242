using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>
/// Openings inside letters and gaps between them, each as the median over a line: thread closes them when they are
/// small. Silent for small letters of running stitch, which have open shapes, and for connected script.
/// </summary>
internal static class Openings
{
    internal static readonly Check Counter = new("lettering.counter", Needs.SeatedDesign, FindCounters, SayCounter);

    internal static readonly Check Gap = new("lettering.gap", Needs.SeatedDesign, FindGaps, SayGap);

    private const double PerMicrometer = 1000;

    private static IEnumerable<Occurrence> FindCounters(Subject subject, RuleInForce rule) => Judged(subject, rule)
        .Select(line => Judge(line, rule, line.Line.Glyphs.Where(glyph => glyph.CounterMm is not null).ToArray(), glyph => glyph.CounterMm!.Value, subject.PlaceOf))
        .OfType<Occurrence>();

    private static IEnumerable<Occurrence> FindGaps(Subject subject, RuleInForce rule) => Judged(subject, rule)
        .Select(line => Judge(
            line,
            rule,
            line.Line.Glyphs.Where(glyph => glyph.GapMm is not null && glyph.Index + 1 < line.Line.Glyphs.Count).ToArray(),
            glyph => glyph.GapMm!.Value,
            glyph => subject.PlaceOf(glyph, line.Line.Glyphs[glyph.Index + 1])))
        .OfType<Occurrence>();

    private static IEnumerable<LetterLine> Judged(Subject subject, RuleInForce rule) =>
        LetterLine.Of(subject).Where(line => !IsSilent(line, rule.Parameter("runningSilentBelowMm")));

    private static bool IsSilent(LetterLine line, double runningBelowMm) =>
        line.Line.IsConnected || (line.IsRunning && line.Line.LetterHeightMm < runningBelowMm);

    /// <summary>The place is the letter with the smallest one.</summary>
    private static Occurrence? Judge(
        LetterLine line, RuleInForce rule, IReadOnlyList<Glyph> letters, Func<Glyph, double> measure, Func<Glyph, Place> placeOf)
    {
        if (letters.Count == 0)
            return null;
        var factor = ThreadFactors.OfWeight(line, rule);
        var measured = MedianOf(letters.Select(measure));
        return rule.Limits.PassedBy(measured / factor, line.Worst) is { } passed
            ? new Occurrence(placeOf(letters.OrderBy(measure).First()))
            {
                Measured = measured,
                Level = passed.Level,
                LimitHere = passed.Value * factor,
            }
            : null;
    }

    /// <summary>To 0.1 mm, as the tape has it.</summary>
    private static double MedianOf(IEnumerable<double> values) => Math.Round(
        Median.Of([.. values.Select(value => (int)Math.Round(value * PerMicrometer))]) / PerMicrometer, 1, MidpointRounding.AwayFromZero);

    private static string SayCounter(Report report) =>
        $"The openings inside letters are {Figure.Mm(report.Measured)} wide; at least {Figure.Mm(report.LimitValue)} is wanted.";

    private static string SayGap(Report report) => report.Measured < 0
        ? $"Letters overlap by {Figure.Mm(-report.Measured)}; a gap of at least {Figure.Mm(report.LimitValue)} is wanted."
        : $"Letters stand {Figure.Mm(report.Measured)} apart; at least {Figure.Mm(report.LimitValue)} is wanted.";
}
