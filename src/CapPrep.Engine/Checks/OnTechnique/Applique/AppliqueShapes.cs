using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>
/// Finds where fabric may be laid: a closed line, lines or zigzags along it, and satin over all of them. A patch is
/// held by a line alone, too.
/// </summary>
internal static class AppliqueShapes
{
    // House, percent: of a line under satin, and of a piece of satin that takes part in it.
    private const int CoveredPercent = 80;
    private const int TakesPartPercent = 5;

    // House: satin so near a line, 1.5 mm, was meant to lie over it.
    private const int BesideCells = 6;

    /// <summary>In received order of their first lines.</summary>
    internal static IReadOnlyList<AppliqueShape> Of(DesignReading reading, StitchSequence stitches, Technique technique)
    {
        var lines = LineTurns.Of(reading, stitches);
        var satin = reading.Pieces.Where(LineTurns.IsCover).ToArray();
        var shapes = new List<AppliqueShape>();
        foreach (var line in lines.Where(line => line is { IsClosed: true, IsLine: true }))
        {
            if (shapes.Any(shape => shape.Along.Contains(line)))
                continue;
            var cover = CoverOf(line, satin, technique);
            if (cover.Count == 0 && technique != Technique.Patch)
                continue;
            LineTurn[] along = [.. lines.Where(other => other.Interval.First >= line.Interval.Last && line.IsFollowedBy(other))];
            if (cover.Count > 0 || along.Any(other => other.Block > line.Block))
                shapes.Add(new(line, along, cover));
        }

        return shapes;
    }

    /// <summary>Satin over a line; where the ticket speaks of fabric, also satin that lies beside it.</summary>
    private static IReadOnlyList<Piece> CoverOf(LineTurn line, Piece[] satin, Technique technique)
    {
        Piece[] later = [.. satin.Where(piece => piece.First > line.Interval.Last && piece.Box.Meets(line.Box))];
        var over = Over(line, later, piece => piece.Blanket);
        return over.Count == 0 && technique is Technique.Applique or Technique.Patch ? Over(line, later, Widened) : over;
    }

    private static IReadOnlyList<Piece> Over(LineTurn line, Piece[] satin, Func<Piece, Cover> blanketOf)
    {
        var parts = satin.Select(piece => (Piece: piece, Blanket: blanketOf(piece)))
            .Where(part => 100 * part.Blanket.Shared(line.Cover) >= TakesPartPercent * line.Cover.Area)
            .ToArray();
        return 100 * line.Cover.SharedWithAny(parts.Select(part => part.Blanket)) >= CoveredPercent * line.Cover.Area ? [.. parts.Select(part => part.Piece)] : [];
    }

    private static Cover Widened(Piece piece)
    {
        var blanket = piece.Blanket;
        for (var cells = 0; cells < BesideCells; cells++)
            blanket = blanket.Grown();
        return blanket;
    }
}
