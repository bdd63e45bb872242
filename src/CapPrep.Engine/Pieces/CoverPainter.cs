using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Draws threads as lines one cell wide into a new cover.</summary>
/// <param name="grid">Grid of the design.</param>
/// <param name="box">Box of everything that will be drawn, tape units.</param>
internal sealed class CoverPainter(CellGrid grid, Box box)
{
    private readonly CellBox _cells = CellBox.Around(grid, box);
    private readonly ulong[] _words = new ulong[CellBox.Around(grid, box).Size];

    public Cover Cover => new(grid, _cells, _words);

    /// <summary>The cover of the thread through points.</summary>
    /// <param name="grid">Grid of the design.</param>
    /// <param name="points">At least one.</param>
    public static Cover Of(CellGrid grid, params ReadOnlySpan<TapePoint> points)
    {
        var box = Box.Of(points[0]);
        foreach (var point in points)
            box = box.Union(point);
        var painter = new CoverPainter(grid, box);
        painter.Dot(points[0]);
        for (var i = 1; i < points.Length; i++)
            painter.Line(points[i - 1], points[i]);
        return painter.Cover;
    }

    /// <summary>One thread from point to point, the cells of its ends included; the same cells whichever end comes first.</summary>
    public void Line(TapePoint from, TapePoint to)
    {
        foreach (var (column, row) in CellLine.Between(grid, from, to))
            Set(column, row);
    }

    /// <summary>One needle point.</summary>
    public void Dot(TapePoint at) => Set(grid.Column(at.X), grid.Row(at.Y));

    private void Set(int column, int row) =>
        _words[((row - _cells.Bottom) * _cells.Words) + (column >> 6) - _cells.LeftWord] |= 1UL << (column & 63);
}
