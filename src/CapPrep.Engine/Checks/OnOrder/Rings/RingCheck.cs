using CapPrep.Engine.Checks.OnBorders;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnOrder.Rings;

/// <summary>
/// Large closed borders that are sewn round in one sweep: the cloth is pushed along, and the ends do not meet (fact row
/// Q13). Silent for strong borders, the edge of a patch or applique that is held already, and stiff fronts of one piece.
/// </summary>
internal static class RingCheck
{
    internal static readonly Check Check = new(
        "order.ring",
        Needs.SeatedDesign,
        Find,
        report => $"{Figure.Count(report.WorstFirst.Count, "ring is", "rings are")} sewn round in one sweep, up to {Figure.Mm(report.Measured)} across.");

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (subject.Setup.Style is { CenterSeam: null, Structure: CrownStructure.Structured } || subject.Ticket.Technique == Technique.Patch)
            yield break;
        foreach (var ring in Rings(subject))
        {
            var (box, first, last) = (ring.Box, ring.Pieces[0].First, ring.Pieces[^1].Last);
            var isLarge = box.Width > 10 * rule.Parameter("widthAboveMm") || box.Height > 10 * rule.Parameter("heightAboveMm");
            if (isLarge && !IsStrong(ring, subject, rule) && !CoversApplique(ring, subject))
                yield return new(subject.PlaceOf(first, last)) { Measured = Math.Max(box.Width, box.Height) / 10.0 };
        }
    }

    private static IEnumerable<ClosedWay> Rings(Subject subject) => subject.Reading.Pieces
        .Where(piece => piece.Sure && piece.Class is StitchClass.Satin or StitchClass.Running or StitchClass.Retraced or StitchClass.OpenZigzag or StitchClass.Pattern)
        .Where(piece => !subject.Foam.Contains(piece))
        .GroupBy(piece => piece.Element)
        .Where(pieces => pieces.Any(piece => piece.Class is StitchClass.Satin or StitchClass.Pattern || IsBorder(piece, subject)))
        .Select(pieces => ClosedWay.Of([.. pieces], subject.Stitches))
        .OfType<ClosedWay>();

    /// <summary>A line round nothing is a drawing, not a border.</summary>
    private static bool IsBorder(Piece piece, Subject subject) => subject.Borders.Any(border => border.Parts.Contains(piece));

    /// <summary>Wide, and deep over the fill that it borders.</summary>
    private static bool IsStrong(ClosedWay ring, Subject subject, RuleInForce rule)
    {
        EdgeRow[] rows = [.. subject.Borders
            .Where(border => border.Parts.Any(ring.Pieces.Contains))
            .SelectMany(border => border.RowsOnEdge(subject.Stitches))
            .Where(row => ring.Pieces.Contains(row.Part))];
        return rows.Length > 0
            && EdgeRow.Quantile(rows, 0.5, row => row.WidthMm) + rule.Parameter("readToMm") >= rule.Parameter("strongFromMm")
            && EdgeRow.Quantile(rows, 0.5, row => row.OverlapMm) + rule.Parameter("readToMm") >= rule.Parameter("strongOverlapFromMm");
    }

    private static bool CoversApplique(ClosedWay ring, Subject subject) =>
        subject.AppliqueShapes.Any(shape => shape.HasStop && shape.Cover.Any(ring.Pieces.Contains));
}
