using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// The grid of cells of 0.25 mm that all covers of a design lie on. It begins at the lowest and the leftmost needle
/// point, so that it moves with the design, wherever the tape starts.
/// </summary>
/// <param name="Left">Left edge of column 0, tape units.</param>
/// <param name="Bottom">Lower edge of row 0, tape units.</param>
internal readonly record struct CellGrid(int Left, int Bottom)
{
    private const int UnitsPerTwoCells = 5;

    /// <summary>Two positions in one cell are at most so far apart, tape units.</summary>
    public const int Reach = 2;

    /// <summary>The grid of a design.</summary>
    /// <param name="design">Box of all its needle points.</param>
    public static CellGrid Of(Box design) => new(design.Left, design.Bottom);

    public int Column(int x) => CellsFrom(x - Left);

    public int Row(int y) => CellsFrom(y - Bottom);

    /// <summary>Lower left corner of a cell, tape units, half a unit to the left and down if need be.</summary>
    public TapePoint Corner(int column, int row) => new(Left + UnitsOf(column), Bottom + UnitsOf(row));

    private static int CellsFrom(int units) => Floor(2 * units, UnitsPerTwoCells);

    private static int UnitsOf(int cells) => Floor(cells * UnitsPerTwoCells, 2);

    private static int Floor(int value, int by) => value >= 0 ? value / by : -((by - 1 - value) / by);
}
