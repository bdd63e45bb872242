namespace CapPrep.Engine.Shift.Cloth;

/// <summary>
/// A rectangle of cloth with a mesh of equal squares. Nodes are numbered from the bottom up, column by column from the
/// left, so that the stiffness matrix has a narrow band.
/// </summary>
/// <param name="LeftMm">x of the left edge; 0 is the center seam.</param>
/// <param name="BottomMm">y of the bottom edge; 0 is the brim seam.</param>
/// <param name="MeshMm">Edge of a square.</param>
/// <param name="Columns">Squares side by side.</param>
/// <param name="Rows">Squares one over the other.</param>
internal sealed record SheetShape(double LeftMm, double BottomMm, double MeshMm, int Columns, int Rows)
{
    internal int Nodes => (Columns + 1) * (Rows + 1);

    /// <summary>Two at every node: across, then up.</summary>
    internal int Unknowns => 2 * Nodes;

    /// <summary>How far from the diagonal the matrix can hold anything.</summary>
    internal int Band => (2 * (Rows + 2)) + 1;

    internal int Squares => Columns * Rows;

    /// <summary>Lower left, lower right, upper right, upper left.</summary>
    internal (int, int, int, int) CornersOf(int square)
    {
        var (column, row) = (square / Rows, square % Rows);
        var first = NodeAt(column, row);
        return (first, first + Rows + 1, first + Rows + 2, first + 1);
    }

    internal int NodeAt(int column, int row) => (column * (Rows + 1)) + row;

    internal (double X, double Y) PositionOf(int node) =>
        (LeftMm + (node / (Rows + 1) * MeshMm), BottomMm + (node % (Rows + 1) * MeshMm));

    /// <summary>The square a point lies in, and where in it, from -1 to 1; null beyond the edges.</summary>
    internal InSquare? At(double x, double y)
    {
        var (right, up) = ((x - LeftMm) / MeshMm, (y - BottomMm) / MeshMm);
        if (right < 0 || up < 0 || right >= Columns || up >= Rows)
            return null;
        var (column, row) = ((int)right, (int)up);
        return new((column * Rows) + row, (2 * (right - column)) - 1, (2 * (up - row)) - 1);
    }
}

/// <param name="Square">Its number.</param>
/// <param name="Xi">From its left edge, -1, to its right one, 1.</param>
/// <param name="Eta">From its bottom, -1, to its top, 1.</param>
internal readonly record struct InSquare(int Square, double Xi, double Eta);
