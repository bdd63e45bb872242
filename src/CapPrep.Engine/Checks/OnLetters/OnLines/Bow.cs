using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>
/// A long, low, straight line near the brim of a low or soft cap looks bowed up at its ends once the cap is worn
/// (fact row F07). Lines that tilt on purpose are not judged.
/// </summary>
internal static class Bow
{
    internal static readonly Check Check = new("place.bow", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) =>
        IsLowOrSoft(subject.Setup.Style!, rule.Parameter("lowCrownBelowMm"))
            ? subject.TextLines.Where(line => IsJudged(line, rule)).Select(line => new Occurrence(subject.PlaceOf(line)) { Measured = WidthMm(line) })
            : [];

    private static bool IsLowOrSoft(CapStyle style, double lowMm) =>
        style.Structure == CrownStructure.Unstructured || style.CrownHeightMm < lowMm;

    private static bool IsJudged(TextLine line, RuleInForce rule) =>
        !line.Base.IsArc
        && Math.Abs(line.Base.TiltDegrees) <= rule.Parameter("tiltAtMostDegrees")
        && (line.CapHeightMm ?? line.LetterHeightMm) <= rule.Parameter("lettersAtMostMm")
        && line.Box.Bottom <= rule.Parameter("aboveBrimAtMostMm") * Tenths.PerMillimeter;

    private static double WidthMm(TextLine line) => line.Box.Width / (double)Tenths.PerMillimeter;

    private static string Say(Report report) =>
        $"The straight line of {Figure.Mm(report.Measured)} will look bowed up at its ends.";
}
