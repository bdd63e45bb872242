using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// How far neighboring rows gape where they lie farthest apart: what digitizers set as spacing. Of satin, whose rows
/// meet on one side, that is the distance of needle points on the other; of parallel rows it is that from row to row.
/// </summary>
internal static class RowOpenings
{
    // Fewer rows can be anything.
    private const int FewestRows = 12;

    /// <summary>Mean share of the piece, mm; null for pieces of too few rows.</summary>
    internal static double? OfMm(Piece piece, StitchSequence stitches)
    {
        var rows = piece.RowsInOrder;
        if (rows.Count < FewestRows)
            return null;
        var (turning, open) = (0.0, 0.0);
        for (var k = 1; k < rows.Count; k++)
        {
            var (one, other) = Apart(rows[k - 1], rows[k], stitches);
            (turning, open) = (turning + one, open + other);
        }

        return turning + open == 0 ? null : piece.PitchMm * Math.Max(turning, open) / (turning + open);
    }

    /// <summary>How far two rows lie apart, tape units, where the thread turns and at their other ends.</summary>
    private static (double Turning, double Open) Apart(Interval row, Interval next, StitchSequence stitches)
    {
        var (from, to) = (stitches.At(row.First), stitches.At(row.Last));
        var (back, end) = (stitches.At(next.First), stitches.At(next.Last));
        var along = to - from + back - end;
        var length = Math.Sqrt(Fine.Square(along));
        return length == 0 ? (0, 0) : (Math.Abs(Fine.Cross(along, back - to)) / length, Math.Abs(Fine.Cross(along, end - from)) / length);
    }
}
