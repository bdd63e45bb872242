using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>A design seen from the center seam: x to the viewer's right of it, y above the brim seam, tape units.</summary>
internal sealed class SeamView
{
    private readonly Subject _subject;
    private readonly int _seamX;
    private readonly Span[] _lines;
    private readonly Span[] _open;

    private SeamView(Subject subject, int seamX)
    {
        (_subject, _seamX) = (subject, seamX);
        _lines = [.. subject.Reading.Spans.Where(IsUnder)];
        _open = [.. subject.Reading.Spans.Where(span => IsUnder(span) || IsLine(span))];
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

    /// <summary>Points on the thread of an area, at each needle point and at every 0.5 mm between them.</summary>
    internal IEnumerable<TapePoint> Thread(Piece piece)
    {
        for (var point = piece.First; point <= piece.Last; point++)
        {
            yield return At(point);
            if (point == piece.Last)
                break;
            var (from, way) = (At(point), At(point + 1) - At(point));
            var parts = (int)(Fine.Length(way) / (5 * Fine.PerTenth)) + 1;
            for (var part = 1; part < parts; part++)
                yield return from + new TapePoint(way.X * part / parts, way.Y * part / parts);
        }
    }

    /// <summary>
    /// Penetrations under an area that carry it, its own and those of earlier elements. Short ends of underlay may be read
    /// as lines of their own: under later cover a line is underlay, whatever it is for.
    /// </summary>
    internal IEnumerable<TapePoint> PointsUnder(Piece piece) => _open
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

    /// <summary>Later cover lies on half of it or more (house): it is ground, and nobody sees it.</summary>
    internal bool Hides(Piece piece) => _subject.Ground[piece].UnderCover >= 0.5;

    private static bool IsUnder(Span span) => span.Role is SpanRole.Underlay or SpanRole.HiddenTravel;

    private static bool IsLine(Span span) => span.Class is StitchClass.Running or StitchClass.Retraced or StitchClass.OpenZigzag or StitchClass.OpenFill;

    private TapePoint FromSeam(TapePoint onCap) => onCap with { X = onCap.X - _seamX };

    private bool Covers(Cover cover, int point)
    {
        var (at, grid) = (_subject.Stitches.At(point), _subject.Stitches.Grid);
        return cover.Contains(grid.Column(at.X), grid.Row(at.Y));
    }
}
