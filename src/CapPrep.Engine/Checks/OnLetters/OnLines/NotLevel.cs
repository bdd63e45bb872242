using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>
/// Lines that stand a little askew: the eye takes them for badly framed. A line that tilts more is meant so. On an
/// arc the same is seen by its apex, which lies beside the middle of the letters. Silent for arcs of more than half
/// a circle, for a line too short for its tilt to show, and for lines that are not sure: their tilt is not either.
/// </summary>
internal static class NotLevel
{
    internal static readonly Check Check = new("place.not-level", Needs.SeatedDesign, Find, Say);

    // The feet of fewer letters tell no tilt.
    private const int FewestLetters = 6;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) => subject.TextLines
        .Where(line => line.Sure && line.Make != LetterMake.Running && line.Glyphs.Count >= FewestLetters)
        .Where(line => line.Base.IsArc || rule.Limits.PassedBy(TiltOfFeet(line)) is not null)
        .Where(line => IsSeen(line.Base, rule.Parameter("riseAtLeastMm"), rule.Parameter("apexOffAboveMm")))
        .Select(line => new Occurrence(subject.PlaceOf(line))
        {
            Measured = Tilt(line.Base),
            Level = LevelOf(line.Base, rule),
            Text = Spoken(line.Base),
        })
        .Where(line => rule.Limits.PassedBy(line.Measured) is not null);

    private static bool IsSeen(BaseLine line, double riseMm, double apexOffMm) =>
        Math.Abs(line.End.Y - line.Start.Y) >= riseMm && (!line.IsArc || (IsAtMostHalfACircle(line) && ApexOffMm(line) > apexOffMm));

    private static bool IsAtMostHalfACircle(BaseLine line) => line.LengthMm <= Math.PI * line.RadiusMm!.Value;

    private static double ApexOffMm(BaseLine line) => Math.Abs(line.CenterMm!.Value.X - ((line.Start.X + line.End.X) / 2));

    /// <summary>By the median way from the lowest point of one letter to that of another: one that hangs does not tilt it.</summary>
    private static double TiltOfFeet(TextLine line)
    {
        double[] rises =
        [
            .. line.Glyphs.SelectMany(left => line.Glyphs.Skip(left.Index + 1), (left, right) => (Left: left.Box, Right: right.Box))
                .Where(pair => pair.Right.Left > pair.Left.Left)
                .Select(pair => (double)(pair.Right.Bottom - pair.Left.Bottom) / (pair.Right.Left - pair.Left.Left))
                .Order(),
        ];
        return rises.Length == 0 ? 0 : Trig.Degrees(1, Math.Abs(rises[rises.Length / 2]));
    }

    private static double Tilt(BaseLine line) => Math.Abs(line.TiltDegrees);

    private static Severity LevelOf(BaseLine line, RuleInForce rule) =>
        Tilt(line) > rule.Parameter("drawnSoAboveDegrees") ? Severity.Note : Severity.Warn;

    private static string Spoken(BaseLine line)
    {
        var side = line.TiltDegrees > 0 ? "right" : "left";
        return line.IsArc
            ? $"The apex of an arc lies {Figure.Mm(ApexOffMm(line))} beside the middle of its letters."
            : $"A line of letters rises by {Figure.Plain(Tilt(line), 1)} degrees to the viewer's {side}.";
    }

    private static string Say(Report report) => report.Limit.Level == Severity.Note
        ? $"{report.Worst.Text} It is taken as drawn so."
        : $"{report.Worst.Text} On a cap that looks like bad framing.";
}
