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
            var cover = CoverOf(line, satin);
            if (cover.Count == 0 && technique != Technique.Patch)
                continue;
            LineTurn[] along = [.. lines.Where(other => other.Interval.First >= line.Interval.Last && line.IsFollowedBy(other))];
            if (cover.Count > 0 || along.Any(other => other.Block > line.Block))
                shapes.Add(new(line, along, cover));
        }

        return shapes;
    }

    private static IReadOnlyList<Piece> CoverOf(LineTurn line, Piece[] satin)
    {
        Piece[] over = [.. satin.Where(piece => piece.First > line.Interval.Last && 100 * piece.Blanket.Shared(line.Cover) >= TakesPartPercent * line.Cover.Area)];
        return 100 * line.Cover.SharedWithAny(over.Select(piece => piece.Blanket)) >= CoveredPercent * line.Cover.Area ? over : [];
    }
}
