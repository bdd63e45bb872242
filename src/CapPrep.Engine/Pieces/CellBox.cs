using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>A box of cells: rows with both ends included, whole words of 64 cells along a row.</summary>
internal readonly record struct CellBox(int LeftWord, int Bottom, int RightWord, int Top)
{
    public static readonly CellBox None = new(0, 0, -1, -1);

    public int Rows => Math.Max(0, Top - Bottom + 1);

    /// <summary>Words in a row.</summary>
    public int Words => Math.Max(0, RightWord - LeftWord + 1);

    /// <summary>Words in all rows.</summary>
    public long Size => (long)Rows * Words;

    /// <summary>The cells in both; without rows or words when there are none.</summary>
    public CellBox Common(in CellBox other) => new(
        Math.Max(LeftWord, other.LeftWord), Math.Max(Bottom, other.Bottom),
        Math.Min(RightWord, other.RightWord), Math.Min(Top, other.Top));

    /// <summary>The cells that a box in tape units touches.</summary>
    public static CellBox Around(CellGrid grid, Box box) => new(
        grid.Column(box.Left) >> 6, grid.Row(box.Bottom), grid.Column(box.Right) >> 6, grid.Row(box.Top));
}
