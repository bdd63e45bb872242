using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnTechnique;

/// <summary>The rows of a column, one by one.</summary>
internal sealed class ColumnRows
{
    // The spacing is taken over so many rows: tapes are written in tenths of a millimeter, which is half of a foam pitch.
    private const int Window = 10;

    private readonly (TapePoint From, TapePoint To)[] _rows;

    private ColumnRows((TapePoint From, TapePoint To)[] rows) => _rows = rows;

    /// <param name="piece">A piece with rows.</param>
    /// <param name="stitches">The stitches of the tape.</param>
    internal static ColumnRows Of(Piece piece, StitchSequence stitches) =>
        new([.. piece.RowsInOrder.Select(row => (stitches.At(row.First), stitches.At(row.Last)))]);

    internal int Count => _rows.Length;

    internal (TapePoint From, TapePoint To) this[int row] => _rows[row];

    /// <summary>Median distance of needle points on one side, mm, across the rows; 0 for fewer than two rows.</summary>
    internal double PitchMm()
    {
        var window = Math.Min(Window, _rows.Length - 1);
        return window < 1 ? 0 : Middle(Enumerable.Range(0, _rows.Length - window).Select(row => 2 * AdvanceMm(row, row + window) / window));
    }

    /// <summary>The width that a share of the rows does not reach, mm.</summary>
    internal double WidthMm(double share)
    {
        double[] widths = [.. _rows.Select(LengthMm).Order()];
        return widths.Length == 0 ? 0 : widths[Math.Min(widths.Length - 1, (int)(share * widths.Length))];
    }

    private static double LengthMm((TapePoint From, TapePoint To) row) => Fine.Millimeters(Fine.Length(row.To - row.From));

    /// <summary>How far one row lies from another, across the one in the middle between them.</summary>
    private double AdvanceMm(int first, int last)
    {
        var along = Chord((first + last) / 2);
        var length = Math.Sqrt(Fine.Square(along));
        var apart = _rows[last].From + _rows[last].To - _rows[first].From - _rows[first].To;
        return length == 0 ? 0 : Math.Abs(Fine.Cross(along, apart)) / (2 * length * Tenths.PerMillimeter);
    }

    private TapePoint Chord(int row) => _rows[row].To - _rows[row].From;

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }
}
