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

    // Rows are looked at so far from their ends, as a share of their length: at the very ends lie steps to the next row.
    private const double FromEnd = 0.15;

    /// <summary>Mean share of the piece, mm; null for pieces of too few rows.</summary>
    internal static double? OfMm(Piece piece, StitchSequence stitches)
    {
        var rows = piece.RowsInOrder;
        if (rows.Count < FewestRows)
            return null;
        var (turning, open) = (0.0, 0.0);
        for (var k = 1; k < rows.Count; k++)
        {
            var (one, other) = Apart(new(rows[k - 1], stitches), new(rows[k], stitches));
            (turning, open) = (turning + one, open + other);
        }

        return turning + open == 0 ? null : piece.PitchMm * (1 - TurningShare(turning / (turning + open)));
    }

    /// <summary>From what is seen a little inside to what it is at the turn: 0 where rows meet, a half where they lie parallel.</summary>
    private static double TurningShare(double inside) => Math.Clamp((inside - FromEnd) / (1 - (2 * FromEnd)), 0, 0.5);

    /// <summary>How far two rows lie apart near the turn of the thread and near their other ends, tape units.</summary>
    private static (double Turning, double Open) Apart(Row row, Row next)
    {
        var (from, to) = (row.At(FromEnd), row.At(1 - FromEnd));
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        return length == 0 ? (0, 0) : (Across(to, next.At(FromEnd)), Across(from, next.At(1 - FromEnd)));

        double Across((double X, double Y) one, (double X, double Y) other) =>
            Math.Abs((dx * (other.Y - one.Y)) - (dy * (other.X - one.X))) / length;
    }

    private readonly struct Row(Interval row, StitchSequence stitches)
    {
        /// <summary>The point at a share of the way through its needle points.</summary>
        internal (double X, double Y) At(double share)
        {
            var rest = share * stitches.LengthOf(row);
            for (var point = row.First + 1; point <= row.Last; point++)
            {
                var (from, step) = (stitches.At(point - 1), stitches.At(point) - stitches.At(point - 1));
                var length = (double)Fine.Length(step);
                if (length >= rest && length > 0)
                    return (from.X + (step.X * rest / length), from.Y + (step.Y * rest / length));
                rest -= length;
            }

            return (stitches.At(row.Last).X, stitches.At(row.Last).Y);
        }
    }
}
