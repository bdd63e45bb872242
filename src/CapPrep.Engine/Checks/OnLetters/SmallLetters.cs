using CapPrep.Engine.Lettering;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>
/// Height of the smallest letters of a line as the customer sees them: capitals on capitals, lower case on the
/// x-height, to the tape's own 0.1 mm. The limits are those of satin letters in 40 wt on cloth.
/// </summary>
internal static class SmallLetters
{
    internal static readonly Check Check = new("lettering.small", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) =>
        LetterLine.Of(subject).Select(line => Judge(subject, line, rule)).OfType<Occurrence>();

    private static Occurrence? Judge(Subject subject, LetterLine line, RuleInForce rule)
    {
        var factor = Factor(line, rule);
        var height = HeightMm(line.Line);
        return rule.Limits.PassedBy(height / factor, line.Worst) is { } passed
            ? new Occurrence(subject.PlaceOf(Smallest(line.Line)))
            {
                Measured = height,
                Level = passed.Level,
                LimitHere = passed.Value * factor,
                Text = $"{Heights(line.Line)} {Wanted(line, passed.Value!.Value * factor)}",
            }
            : null;
    }

    private static double HeightMm(TextLine line) => Math.Round(line.LetterHeightMm, 1, MidpointRounding.AwayFromZero);

    /// <summary>By what the limits of satin letters in 40 wt on cloth are multiplied.</summary>
    private static double Factor(LetterLine line, RuleInForce rule) =>
        (line.IsRunning ? rule.Parameter("factorRunning") : 1)
        * (line.LiesOnFill ? rule.Parameter("factorOnFill") : 1)
        * (line.IsMetallic ? rule.Parameter("factorMetallic") : 1)
        * ThreadFactors.OfWeight(line, rule);

    /// <summary>A letter of just that height; signs like a hyphen are less high and no letters.</summary>
    private static Glyph Smallest(TextLine line) =>
        line.Glyphs.OrderBy(glyph => Math.Abs(glyph.HeightMm - line.LetterHeightMm)).First();

    private static string Heights(TextLine line) => line is { XHeightMm: not null, CapHeightMm: { } capitals }
        ? $"The smallest letters are {Figure.Mm(HeightMm(line))} tall, the capitals {Figure.Mm(capitals)}."
        : $"The smallest letters are {Figure.Mm(HeightMm(line))} tall.";

    private static string Wanted(LetterLine line, double limit)
    {
        var kind = (line.IsRunning ? " for single-line letters" : "")
            + ThreadFactors.Spoken(line)
            + (line.LiesOnFill ? " on a fill" : "");
        return kind.Length == 0 ? $"At least {Figure.Mm(limit)} is wanted." : $"Wanted{kind}: {Figure.Mm(limit)}.";
    }

    private static string Say(Report report) => report.WorstFirst.Count == 1
        ? report.Worst.Text
        : $"{report.Worst.Text} {Figure.Count(report.WorstFirst.Count - 1, "more line is", "more lines are")} small too.";
}
