using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>
/// A cell of 1 mm on a grid whose lines cross in the middle of the design, so that a design that is shifted, mirrored
/// or turned meets the same cells. Sorted by row, then by column.
/// </summary>
internal readonly record struct CellKey(int Row, int Column)
{
    private const int RowBits = 32;

    internal long Packed => ((long)Row << RowBits) + Column;

    internal static CellKey Of(long packed)
    {
        var column = unchecked((int)packed);
        return new((int)((packed - column) >> RowBits), column);
    }

    internal CellKey Beside(int rows, int columns) => new(Row + rows, Column + columns);
}

/// <summary>Where points lie on the grid of cells. Half tape units, since the middle may lie between two units.</summary>
internal sealed class CellGrid(Box design)
{
    /// <summary>Side of a cell, half tape units.</summary>
    internal const int Side = 2 * Tenths.PerMillimeter;

    /// <summary>The cells a point lies in: one, two when it lies on the line between them, four in a corner.</summary>
    internal IEnumerable<CellKey> CellsOf(TapePoint point)
    {
        var (x, y) = FromMiddle(point);
        for (var row = First(y); row <= Floor(y); row++)
        {
            for (var column = First(x); column <= Floor(x); column++)
                yield return new(row, column);
        }
    }

    /// <summary>Half tape units from the left and the lower edge of a cell, 0 to <see cref="Side"/>.</summary>
    internal (int X, int Y) Inside(CellKey cell, TapePoint point)
    {
        var (x, y) = FromMiddle(point);
        return (x - (cell.Column * Side), y - (cell.Row * Side));
    }

    /// <summary>The box of cells from one to another, mm.</summary>
    internal BoxMm BoxOf(int left, int bottom, int right, int top)
    {
        const double perMillimeter = 2 * Tenths.PerMillimeter;
        var (x, y) = (design.Left + (double)design.Right, design.Bottom + (double)design.Top);
        return new(
            (x + (left * Side)) / perMillimeter,
            (y + (bottom * Side)) / perMillimeter,
            (x + ((right + 1) * Side)) / perMillimeter,
            (y + ((top + 1) * Side)) / perMillimeter);
    }

    private (int X, int Y) FromMiddle(TapePoint point) =>
        ((2 * point.X) - design.Left - design.Right, (2 * point.Y) - design.Bottom - design.Top);

    private static int Floor(int at) => (int)Math.Floor(at / (double)Side);

    private static int First(int at) => at % Side == 0 ? (at / Side) - 1 : Floor(at);
}
