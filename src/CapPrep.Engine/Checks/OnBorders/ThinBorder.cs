using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>
/// Outlines so narrow that they miss their fill when the cloth shifts: lines and narrow columns along its rim. Silent well
/// inside the fill and where both are of one thread; a note on a flat clamp, where the cloth shifts little.
/// </summary>
internal static class ThinBorder
{
    internal static readonly Check Check = new("border.thin", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        Severity? level = subject.Setup.Frame.Holds == FrameHold.FlatClamp ? Severity.Note : null;
        foreach (var border in subject.Borders)
        {
            if (ThinOf(border, subject, rule) is { } thin)
                yield return thin with { Level = level };
        }
    }

    /// <summary>The rule speaks of this border, by the limits in force.</summary>
    internal static bool Reports(Subject subject, Border border) =>
        subject.Setup.Rules.Find(Check.Rule) is { } rule
        && ThinOf(border, subject, new(rule, Limits.Of(rule, subject))) is { } thin
        && Limits.Of(rule, subject).PassedBy(thin) is not null;

    private static Occurrence? ThinOf(Border border, Subject subject, RuleInForce rule) => BorderThreads.AreOne(border, subject)
        ? null
        : Lines(border, subject, rule) ?? Columns(border, subject, rule);

    private static Occurrence? Lines(Border border, Subject subject, RuleInForce rule)
    {
        var rim = new Rim(Rim.Closed(border.Fill.Blanket));
        Piece[] lines = [.. border.Lines];
        return lines.Sum(line => LengthMm(line, rim, subject)) >= rule.Parameter("lengthAtLeastMm")
            ? new(BorderPlaces.Of(subject, lines)) { Measured = 0, Text = "A running line outlines a fill" }
            : null;
    }

    /// <summary>Once along the rim: what is sewn there and back counts half.</summary>
    private static double LengthMm(Piece line, Rim rim, Subject subject)
    {
        var length = Enumerable.Range(line.First + 1, Math.Max(0, line.Last - line.First))
            .Where(point => rim.IsNear(subject.Stitches.At(point)) && rim.IsNear(subject.Stitches.At(point - 1)))
            .Sum(point => Fine.Millimeters(Fine.Length(subject.Stitches.At(point) - subject.Stitches.At(point - 1))));
        return line.Class == StitchClass.Retraced ? length / 2 : length;
    }

    private static Occurrence? Columns(Border border, Subject subject, RuleInForce rule)
    {
        EdgeRow[] thin = [.. border.RowsOnEdge(subject.Stitches)
            .Where(row => row.Part.Sure && rule.Limits.PassedBy(row.WidthMm + rule.Parameter("readToMm")) is not null)];
        if (EdgeRow.LengthMm(thin) < rule.Parameter("lengthAtLeastMm"))
            return null;
        var width = EdgeRow.Quantile(thin, 0.5, row => row.WidthMm);
        return new(BorderPlaces.Of(subject, [.. thin.Select(row => row.Part).Distinct()]))
        {
            Measured = width,
            Text = $"A border of only {Figure.Mm(width)} outlines a fill",
        };
    }

    private static string Say(Report report)
    {
        var others = report.WorstFirst.Count - 1;
        var says = $"{report.Worst.Text}; on a cap the two will not meet all round.";
        return others == 0 ? says : $"{says} The same is true of {Figure.Count(others, "more fill")}.";
    }
}
