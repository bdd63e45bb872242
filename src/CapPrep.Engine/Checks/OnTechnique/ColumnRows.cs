using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnTechnique;

/// <summary>One row of a column, from needle point to needle point, tape units.</summary>
/// <param name="Interval">Its penetrations.</param>
internal readonly record struct ColumnRow(Interval Interval, TapePoint From, TapePoint To)
{
    internal TapePoint Chord => To - From;

    internal double Length => Math.Sqrt(Fine.Square(Chord));

    /// <summary>Shortest distance of a point from the row.</summary>
    internal double DistanceTo(TapePoint point)
    {
        var (way, from) = (Chord, point - From);
        var square = Fine.Square(way);
        var share = square == 0 ? 0 : Math.Clamp((double)Fine.Dot(from, way) / square, 0, 1);
        double dx = from.X - (share * way.X), dy = from.Y - (share * way.Y);
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}

/// <summary>The rows of a column, one by one.</summary>
internal sealed class ColumnRows
{
    // The spacing is taken over so many rows: tapes are written in tenths of a millimeter, which is half of a foam pitch.
    private const int Window = 24;

    private readonly ColumnRow[] _rows;

    private ColumnRows(ColumnRow[] rows) => _rows = rows;

    internal static ColumnRows Of(Piece piece, StitchSequence stitches) =>
        new([.. piece.RowsInOrder.Select(row => new ColumnRow(row, stitches.At(row.First), stitches.At(row.Last)))]);

    internal int Count => _rows.Length;

    internal ColumnRow this[int row] => _rows[row];

    internal IReadOnlyList<ColumnRow> All => _rows;

    /// <summary>Median distance of needle points on one side, mm, across the rows; 0 for fewer than two rows.</summary>
    internal double PitchMm()
    {
        var window = Math.Min(Window, _rows.Length - 1);
        return window < 1 ? 0 : Middle(Enumerable.Range(0, _rows.Length - window).Select(row => 2 * AdvanceMm(row, row + window) / window));
    }

    /// <summary>The width that a share of the rows does not reach, mm.</summary>
    internal double WidthMm(double share)
    {
        double[] widths = [.. _rows.Select(row => row.Length / Tenths.PerMillimeter).Order()];
        return widths.Length == 0 ? 0 : widths[Math.Min(widths.Length - 1, (int)(share * widths.Length))];
    }

    /// <summary>The same rows in parts, cut where one row turns against the next by more than 45 degrees.</summary>
    internal IEnumerable<ColumnRows> Straight()
    {
        var first = 0;
        for (var row = 1; row <= _rows.Length; row++)
        {
            if (row < _rows.Length && !Turns(_rows[row - 1].Chord, _rows[row].Chord))
                continue;
            yield return new(_rows[first..row]);
            first = row;
        }
    }

    private static bool Turns(TapePoint one, TapePoint other) => Math.Abs(Fine.Cross(one, other)) > Math.Abs(Fine.Dot(one, other));

    /// <summary>How far one row lies from another, across the one in the middle between them.</summary>
    private double AdvanceMm(int first, int last)
    {
        var along = _rows[(first + last) / 2];
        var apart = _rows[last].From + _rows[last].To - _rows[first].From - _rows[first].To;
        return along.Length == 0 ? 0 : Math.Abs(Fine.Cross(along.Chord, apart)) / (2 * along.Length * Tenths.PerMillimeter);
    }

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }
}
