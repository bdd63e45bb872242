using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>One whole number for every cell of a box; -1 at first.</summary>
internal sealed class CellMap
{
    private const int Nothing = -1;

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

    public void Clear() => _values.AsSpan().Fill(Nothing);

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
