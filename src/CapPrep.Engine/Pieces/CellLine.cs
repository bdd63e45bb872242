using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// The cells of a straight line, one for each step along its longer axis; they do not depend on the line's sense.
/// </summary>
internal struct CellLine
{
    private readonly int _steps;
    private readonly int _short;
    private readonly bool _steep;
    private readonly int _side;
    private int _step;
    private int _error;
    private int _column;
    private int _row;

    private CellLine(int column, int row, int toColumn, int toRow)
    {
        var (across, up) = (toColumn - column, toRow - row);
        _steep = Math.Abs(up) > across;
        (_steps, _short) = _steep ? (Math.Abs(up), across) : (across, Math.Abs(up));
        _side = up < 0 ? -1 : 1;
        _error = _steps / 2;
        _step = -1;
        (_column, _row) = (column, row);
    }

    public readonly (int Column, int Row) Current => (_column, _row);

    /// <summary>From the left end to the right one, upward when it is upright.</summary>
    public static CellLine Between(CellGrid grid, TapePoint from, TapePoint to)
    {
        int column = grid.Column(from.X), row = grid.Row(from.Y);
        int toColumn = grid.Column(to.X), toRow = grid.Row(to.Y);
        return column < toColumn || (column == toColumn && row <= toRow)
            ? new(column, row, toColumn, toRow)
            : new(toColumn, toRow, column, row);
    }

    public readonly CellLine GetEnumerator() => this;

    public bool MoveNext()
    {
        if (++_step == 0)
            return true;
        if (_step > _steps)
            return false;
        _error -= _short;
        var aside = _error < 0;
        if (aside)
            _error += _steps;
        if (_steep || aside)
            _row += _side;
        if (!_steep || aside)
            _column++;
        return true;
    }
}
