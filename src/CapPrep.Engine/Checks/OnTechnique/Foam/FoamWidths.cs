using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>Width and spacing of columns over foam.</summary>
internal static class FoamWidths
{
    // A tenth of the rows may be wider, and half of them narrower: columns may end in points.
    private const double WideShare = 0.9;
    private const double NarrowShare = 0.5;

    /// <summary>The needle cuts narrow foam to pieces. A reading in doubt only warns.</summary>
    internal static readonly Check Narrow = new(
        "foam.narrow",
        Needs.SeatedDesign,
        FindNarrow,
        report => Says(report, "narrow", "at least"));

    internal static readonly Check Wide = new(
        "foam.wide",
        Needs.SeatedDesign,
        (subject, _) => subject.Foam.Shaping.Select(column => new Occurrence(column.PlaceIn(subject)) { Measured = column.Rows.WidthMm(WideShare) }),
        report => Says(report, "wide", "at most"));

    /// <summary>Rows too far apart let foam show, rows too near cut it before it is covered.</summary>
    internal static readonly Check Pitch = new("foam.pitch", Needs.SeatedDesign, FindPitch, SayPitch);

    private static IEnumerable<Occurrence> FindNarrow(Subject subject, RuleInForce rule)
    {
        foreach (var column in subject.Foam.Shaping)
        {
            var width = column.Rows.WidthMm(NarrowShare);
            var holds = rule.Limits.PassedBy(width)?.Level == Severity.Hold;
            yield return new Occurrence(column.PlaceIn(subject)) { Measured = width, Level = holds && !column.Piece.Sure ? Severity.Warn : null };
        }
    }

    private static IEnumerable<Occurrence> FindPitch(Subject subject, RuleInForce rule)
    {
        var least = rule.Parameter("pitchAtLeastMm");
        foreach (var column in subject.Foam.Shaping)
        {
            var pitch = Math.Round(column.Rows.PitchMm(), 2, MidpointRounding.AwayFromZero);
            var found = new Occurrence(column.PlaceIn(subject)) { Measured = pitch };
            yield return pitch < least ? found with { Level = Severity.Warn, LimitHere = least } : found;
        }
    }

    private static string Says(Report report, string word, string bound) =>
        $"{Figure.Count(report.WorstFirst.Count, "column")} over foam: {Figure.Mm(report.Measured)} is too {word}; {bound} {Figure.Mm(report.LimitValue)} is wanted.";

    private static string SayPitch(Report report)
    {
        var bound = report.Measured < report.LimitValue ? "at least" : "at most";
        return $"{Figure.Count(report.WorstFirst.Count, "column")} over foam: needle points on one side lie {Figure.Plain(report.Measured, 2)} mm apart; {bound} {Figure.Plain(report.LimitValue, 2)} mm is wanted.";
    }
}
