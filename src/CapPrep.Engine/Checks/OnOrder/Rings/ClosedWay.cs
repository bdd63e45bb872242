using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnOrder.Rings;

/// <summary>The way that consecutive columns or lines of one element take, as points along their middle.</summary>
/// <param name="Pieces">In the order they are sewn.</param>
/// <param name="Points">Tape units.</param>
internal sealed record ClosedWay(IReadOnlyList<Piece> Pieces, IReadOnlyList<TapePoint> Points)
{
    // Start and end of a ring lie within the width of its column and this, tape units (house).
    private const int Meeting = 20;

    // So many points at least make a ring.
    private const int FewestPoints = 12;

    /// <summary>Null unless it leads once around and back to where it began, in one sweep.</summary>
    internal static ClosedWay? Of(IReadOnlyList<Piece> pieces, StitchSequence stitches)
    {
        TapePoint[] points = [.. pieces.SelectMany(piece => Middles(piece, stitches))];
        if (points.Length < FewestPoints)
            return null;
        var reach = (Tenths.PerMillimeter * pieces.Max(piece => piece.WidthMm)) + Meeting;
        var isClosed = Fine.Square(points[^1] - points[0]) <= reach * reach;
        return isClosed && Math.Abs(Turns(points)) == 1 ? new(pieces, points) : null;
    }

    /// <summary>Around its outer edge.</summary>
    internal Box Box => Pieces.Select(piece => piece.Box).Aggregate((one, other) => one.Union(other));

    private static IEnumerable<TapePoint> Middles(Piece piece, StitchSequence stitches) => piece.RowsInOrder.Count > 0
        ? piece.RowsInOrder.Select(row => Half(stitches.At(row.First) + stitches.At(row.Last)))
        : Enumerable.Range(piece.First, piece.Last - piece.First + 1).Select(stitches.At);

    private static TapePoint Half(TapePoint twice) => new(twice.X / 2, twice.Y / 2);

    /// <summary>How often it goes around the middle of its box: each crossing of the line to the right of it counts.</summary>
    private static int Turns(TapePoint[] points)
    {
        var box = points.Skip(1).Aggregate(Box.Of(points[0]), (all, point) => all.Union(point));
        var middle = Half(new(box.Left + box.Right, box.Bottom + box.Top));
        var turns = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var (from, to) = (points[i] - middle, points[(i + 1) % points.Length] - middle);
            if (from.Y < 0 == to.Y < 0)
                continue;
            var isToTheRight = Fine.Cross(from, to) > 0 == to.Y >= 0;
            turns += isToTheRight ? (to.Y >= 0 ? 1 : -1) : 0;
        }

        return turns;
    }
}
