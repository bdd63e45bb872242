using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>A design seen from the center seam: x to the viewer's right of it, y above the brim seam, tape units.</summary>
internal sealed class SeamView
{
    private readonly Subject _subject;
    private readonly int _seamX;
    private readonly Span[] _lines;

    private SeamView(Subject subject, int seamX)
    {
        (_subject, _seamX) = (subject, seamX);
        _lines = [.. subject.Reading.Spans.Where(span => span.Role is SpanRole.Underlay or SpanRole.HiddenTravel)];
    }

    /// <summary>Null where no center seam runs through the front that is sewn on.</summary>
    internal static SeamView? Of(Subject subject) =>
        subject.Setup.Style?.CenterSeam is not null && subject.Seated.Zone.OriginXMm is { } origin
            ? new(subject, -Tenths.FromMillimeters(origin).Value)
            : null;

    /// <summary>A penetration, counted from 0.</summary>
    internal TapePoint At(int point) => FromSeam(_subject.Points.At(point));

    /// <summary>The middle of a cell, up to a tenth of a millimeter.</summary>
    internal TapePoint At((int Column, int Row) cell) => FromSeam(_subject.CellOnCap(cell.Column, cell.Row));

    /// <summary>Cells of a cover whose distance from the seam lies in a range, both ends included, mm.</summary>
    internal IEnumerable<TapePoint> Strip(Cover cover, double fromMm, double toMm) =>
        cover.CoveredCells().Select(At).Where(at => at.X >= 10 * fromMm && at.X <= 10 * toMm);

    /// <summary>Penetrations under an area that carry it, its own and those of earlier elements.</summary>
    internal IEnumerable<TapePoint> PointsUnder(Piece piece) => _lines
        .TakeWhile(line => line.First < piece.First)
        .SelectMany(line => Enumerable.Range(line.First, line.Penetrations))
        .Where(point => Covers(piece.Blanket, point))
        .Select(At);

    /// <summary>The steps under an area that carry it, as vectors.</summary>
    internal IEnumerable<TapePoint> StepsUnder(Piece piece) => _lines
        .TakeWhile(line => line.First < piece.First)
        .SelectMany(line => Enumerable.Range(line.First + 1, Math.Max(0, line.Penetrations - 1)))
        .Where(point => Covers(piece.Blanket, point))
        .Select(point => At(point) - At(point - 1));

    private TapePoint FromSeam(TapePoint onCap) => onCap with { X = onCap.X - _seamX };

    private bool Covers(Cover cover, int point)
    {
        var (at, grid) = (_subject.Stitches.At(point), _subject.Stitches.Grid);
        return cover.Contains(grid.Column(at.X), grid.Row(at.Y));
    }
}
