using CapPrep.Engine.Checks.OnStitches.Columns;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Layers;

/// <summary>
/// Spots where so many layers of cover lie on each other that thread breaks and the spot gets hard (fact row Q16).
/// Underlay and open rows of a blend are no layers of cover; what was read with doubt does not count, nor work over foam,
/// whose ends are closed by stacking. A spot is a square: narrow columns over three layers bend away, and borders that
/// cross are no spot.
/// </summary>
internal static class StackedLayers
{
    internal static readonly Check Check = new("stitch.stacked", Needs.SeatedDesign, Find, Say);

    // Areas are looked at with a rim of one cell, which closes the holes that slanting rows leave between cells.
    private const int Margin = 1;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        Piece[] covering = [.. subject.Reading.Pieces.Where(piece => IsCover(piece, subject, rule))];
        var side = (int)(rule.Parameter("spotSideMm") * Cover.CellsPerMillimeter) + (2 * Margin);
        Cover[] blankets = [.. covering.Select(piece => piece.Blanket.Grown())];
        if (rule.Limits.Mildest is not { } allowed || (allowed >= 3 && !CoverLayers.AnyFour(blankets)) || CoverLayers.Of(blankets) is not { } layers)
            return [];
        var spots = layers.OfSpots(side);
        return spots.Regions((int)allowed).Select(region => new Occurrence(PlaceOf(subject, region, side, covering)) { Measured = region.Max(spots.At) });
    }

    private static bool IsCover(Piece piece, Subject subject, RuleInForce rule) =>
        piece is { IsClosed: true, Sure: true }
        && !subject.Foam.Contains(piece)
        && piece.ThreadPerAreaMm >= rule.Parameter("threadPerAreaAtLeastMm")
        && !(RowOpenings.OfMm(piece, subject.Stitches) > rule.Parameter("openFromMm"));

    /// <param name="subject">The design.</param>
    /// <param name="region">Lower left cells of the spots.</param>
    /// <param name="side">Of a spot, cells.</param>
    /// <param name="covering">Pieces that are layers of cover.</param>
    private static Place PlaceOf(Subject subject, IReadOnlyList<Cell> region, int side, Piece[] covering)
    {
        Piece[] stacked = [.. covering.Where(piece => region.Any(cell => piece.Blanket.Contains(cell.Column + (side / 2), cell.Row + (side / 2))))];
        var top = stacked[^1];
        return subject.PlaceOf(top.First, top.Last) with
        {
            BoxMm = BoxOf(subject, region, side).ToMillimeters(),
            Elements = [.. stacked.Select(piece => piece.Element + 1).Distinct().Order()],
            Blocks = [.. stacked.Select(piece => piece.Block).Distinct().Order()],
        };
    }

    private static Box BoxOf(Subject subject, IReadOnlyList<Cell> region, int side) =>
        Box.Of(subject.CellOnCap(region.Min(cell => cell.Column) + Margin, region.Min(cell => cell.Row) + Margin))
            .Union(subject.CellOnCap(region.Max(cell => cell.Column) + side - Margin, region.Max(cell => cell.Row) + side - Margin));

    private static string Say(Report report) =>
        $"{Figure.Plain(report.Measured, 0)} layers of cover lie on each other; at most {Figure.Plain(report.LimitValue, 0)} are wanted.";
}
