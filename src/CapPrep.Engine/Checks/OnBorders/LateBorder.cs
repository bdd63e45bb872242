using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>
/// Borders that are sewn long after their fill: the cloth has moved meanwhile. A warn for lines and for borders that are
/// narrow or hardly overlap, a note for strong ones. Silent tone on tone, on a wider fill, and for the cover of an applique.
/// </summary>
internal static class LateBorder
{
    internal static readonly Check Check = new("border.late", Needs.SeatedDesign, Find, Say) { AskAgain = Again.OfNewOrder };

    // A border on another fill lies on it by so much, and so many cells to each side: 1 mm (house).
    private const double LiesOnFill = 0.8;
    private const int WiderBy = 4;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        Border[] borders = [.. subject.Borders.Where(border => !IsSilent(border, subject))];
        if (borders.Length == 0)
            yield break;
        var between = new SewnBetween(subject);
        foreach (var border in borders)
        {
            var share = between.ShareOf(border);
            if (rule.Limits.PassedBy(share) is null)
                continue;
            var weakness = WeaknessOf(border, subject, rule);
            yield return new(BorderPlaces.Of(subject, border.Parts))
            {
                Measured = share,
                Level = weakness is null ? Severity.Note : null,
                Text = weakness ?? "",
            };
        }
    }

    private static bool IsSilent(Border border, Subject subject) =>
        BorderThreads.AreAlike(border, subject)
        || border.Parts.All(part => LiesOnWiderFill(part, border.Fill, subject))
        || subject.AppliqueShapes.Any(shape => shape.HasStop && shape.Cover.Any(cover => border.Parts.Contains(cover)));

    private static bool LiesOnWiderFill(Piece part, Piece fill, Subject subject)
    {
        var cloth = Rim.Grown(part.Blanket, WiderBy);
        var below = subject.Ground[part].Below.Where(piece => piece != fill && piece.Class is StitchClass.Fill or StitchClass.DenseRunning);
        return cloth.SharedWithAny(below.Select(piece => piece.Blanket)) >= LiesOnFill * cloth.Area;
    }

    /// <summary>Why shift would show; null: it would not.</summary>
    private static string? WeaknessOf(Border border, Subject subject, RuleInForce rule)
    {
        var rows = border.RowsOnEdge(subject.Stitches);
        if (rows.Count == 0)
            return border.Lines.Any() ? " It is a running line." : null;
        var width = EdgeRow.Quantile(rows, 0.5, row => row.WidthMm);
        if (width + rule.Parameter("readToMm") < rule.Parameter("widthAtLeastMm"))
            return $" It is only {Figure.Mm(width)} wide.";
        var overlap = EdgeRow.Quantile(rows, rule.Parameter("shareOfLength"), row => row.OverlapMm);
        return overlap + rule.Parameter("readToMm") < rule.Parameter("overlapAtLeastMm")
            ? $" It overlaps its fill by only {Figure.Mm(Math.Max(0, overlap))}."
            : null;
    }

    private static string Say(Report report)
    {
        var (count, share) = (report.WorstFirst.Count, Figure.Plain(100 * report.Measured, 0));
        var says = $"{Figure.Count(count, "border is", "borders are")} sewn late: up to {share} % of the design comes between fill and border.{report.Worst.Text}";
        return count == 1 ? says.Replace("up to ", "", StringComparison.Ordinal) : says;
    }
}
