using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>One whole number for every cell of a box; -1 at first.</summary>
internal sealed class CellMap
{
    public const int Nothing = -1;

    private readonly int _left;
    private readonly int _bottom;
    private readonly int _columns;
    private readonly int[] _values;

    public CellMap(CellGrid grid, Box box)
    {
        (_left, _bottom) = (grid.Column(box.Left), grid.Row(box.Bottom));
        _columns = grid.Column(box.Right) - _left + 1;
        _values = new int[_columns * (grid.Row(box.Top) - _bottom + 1)];
        Clear();
    }

    public int this[int column, int row] => _values[((row - _bottom) * _columns) + column - _left];

    /// <summary>The value at a position in tape units; -1 outside the box.</summary>
    public int At(CellGrid grid, TapePoint at)
    {
        var (column, row) = (grid.Column(at.X) - _left, grid.Row(at.Y) - _bottom);
        return column >= 0 && column < _columns && row >= 0 && row < _values.Length / _columns
            ? _values[(row * _columns) + column]
            : Nothing;
    }

    public void Clear() => _values.AsSpan().Fill(Nothing);

    public void Paint(CellLine line, int value)
    {
        foreach (var (column, row) in line)
            _values[((row - _bottom) * _columns) + column - _left] = value;
    }

    public void Paint(Cover cover, int value)
    {
        foreach (var (column, row) in cover.CoveredCells())
            _values[((row - _bottom) * _columns) + column - _left] = value;
    }

    /// <summary>Cells of a cover whose value is above a limit.</summary>
    public int CountAbove(Cover cover, int limit)
    {
        var count = 0;
        foreach (var (column, row) in cover.CoveredCells())
            count += this[column, row] > limit ? 1 : 0;
        return count;
    }

    /// <summary>Cells of a cover with one value.</summary>
    public int CountEqual(Cover cover, int value)
    {
        var count = 0;
        foreach (var (column, row) in cover.CoveredCells())
            count += this[column, row] == value ? 1 : 0;
        return count;
    }
}
