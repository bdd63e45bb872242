using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Draws threads as lines one cell wide into a new cover.</summary>
/// <param name="box">Box of everything that will be drawn, tape units.</param>
internal sealed class CoverPainter(Box box)
{
    private readonly CellBox _cells = CellBox.Around(box);
    private readonly ulong[] _words = new ulong[CellBox.Around(box).Size];

    public Cover Cover => new(_cells, _words);

    /// <summary>The cover of the thread through points.</summary>
    /// <param name="points">At least one.</param>
    public static Cover Of(params ReadOnlySpan<TapePoint> points)
    {
        var box = Box.Of(points[0]);
        foreach (var point in points)
            box = box.Union(point);
        var painter = new CoverPainter(box);
        painter.Dot(points[0]);
        for (var i = 1; i < points.Length; i++)
            painter.Line(points[i - 1], points[i]);
        return painter.Cover;
    }

    /// <summary>One thread from point to point, the cells of its ends included; the same cells whichever end comes first.</summary>
    public void Line(TapePoint from, TapePoint to)
    {
        foreach (var (column, row) in CellLine.Between(from, to))
            Set(column, row);
    }

    /// <summary>One needle point.</summary>
    public void Dot(TapePoint at) => Set(Cover.CellOf(at.X), Cover.CellOf(at.Y));

    private void Set(int column, int row) =>
        _words[((row - _cells.Bottom) * _cells.Words) + (column >> 6) - _cells.LeftWord] |= 1UL << (column & 63);
}
