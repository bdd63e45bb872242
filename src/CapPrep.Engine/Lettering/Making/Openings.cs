using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>
/// Finds the bare openings inside a letter on cells of 0.25 mm that begin at its box, and measures the smallest: the
/// largest circle in it that meets no thread and no edge of a column.
/// </summary>
internal sealed class Openings
{
    // Fewer cells are cloth between two rows: 0.25 mm2.
    private const int FewestCells = 4;

    // Cloth between two stitches is painted so many times along them.
    private const int Parts = 16;

    // Bare cloth around the box, so that the outside is in one piece, tape units.
    private const int Margin = 5;

    // Stitches, and the edges of columns from each needle point to the next on its side.
    private readonly List<Stretch> _sides;
    private readonly CellGrid _grid;
    private readonly int _columns;
    private readonly int _rows;

    // 0: bare and not met yet, 1: thread, 2: met.
    private readonly byte[] _cells;

    private Openings(IReadOnlyList<Stretch> threads, Box box, bool isFilled)
    {
        _sides = [.. threads];
        _grid = new(box.Left - Margin, box.Bottom - Margin);
        (_columns, _rows) = (_grid.Column(box.Right + Margin) + 1, _grid.Row(box.Top + Margin) + 1);
        _cells = new byte[_columns * _rows];
        for (var i = 0; i < threads.Count; i++)
        {
            Paint(threads[i].From, threads[i].To);
            if (isFilled && i > 0 && threads[i - 1].To == threads[i].From)
                PaintBetween(threads[i - 1], threads[i]);
        }
    }

    /// <summary>Width of the smallest opening, mm; null when there is none.</summary>
    /// <param name="threads">Stitches of the letter.</param>
    /// <param name="box">Their box.</param>
    /// <param name="isFilled">The cloth between two stitches that follow each other is covered.</param>
    public static double? Smallest(IReadOnlyList<Stretch> threads, Box box, bool isFilled)
    {
        var openings = new Openings(threads, box, isFilled);
        openings.Fill(0);
        double[] widths = [.. openings.Regions().Where(region => region.Count >= FewestCells).Select(openings.WidthOf)];
        return widths.Length == 0 ? null : widths.Min();
    }

    private void PaintBetween(Stretch one, Stretch next)
    {
        for (var part = 0; part < Parts; part++)
            Paint(PartOf(one.To, one.From, part), PartOf(next.From, next.To, part));
        Paint(one.From, next.To);
        _sides.Add(new(one.From, next.To));
    }

    private static TapePoint PartOf(TapePoint from, TapePoint to, int part) =>
        from + new TapePoint((to.X - from.X) * part / Parts, (to.Y - from.Y) * part / Parts);

    private void Paint(TapePoint from, TapePoint to)
    {
        foreach (var (column, row) in CellLine.Between(_grid, from, to))
            _cells[(row * _columns) + column] = 1;
    }

    private IEnumerable<List<int>> Regions()
    {
        for (var cell = 0; cell < _cells.Length; cell++)
        {
            if (_cells[cell] == 0)
                yield return Fill(cell);
        }
    }

    /// <summary>Marks the bare cells that hang together with one, side by side.</summary>
    private List<int> Fill(int start)
    {
        var region = new List<int> { start };
        _cells[start] = 2;
        for (var next = 0; next < region.Count; next++)
        {
            var (column, row) = (region[next] % _columns, region[next] / _columns);
            if (column > 0)
                Meet(region, region[next] - 1);
            if (column < _columns - 1)
                Meet(region, region[next] + 1);
            if (row > 0)
                Meet(region, region[next] - _columns);
            if (row < _rows - 1)
                Meet(region, region[next] + _columns);
        }

        return region;
    }

    private void Meet(List<int> region, int cell)
    {
        if (_cells[cell] != 0)
            return;
        _cells[cell] = 2;
        region.Add(cell);
    }

    private double WidthOf(List<int> region)
    {
        var middle = region.Select(MiddleOf).MaxBy(Clearance);
        return 2 * Math.Sqrt(Around(middle).Max(Clearance)) / Tenths.PerMillimeter;
    }

    private TapePoint MiddleOf(int cell) => _grid.Corner(cell % _columns, cell / _columns) + new TapePoint(1, 1);

    private static IEnumerable<TapePoint> Around(TapePoint point) =>
        from x in Enumerable.Range(-2, 5) from y in Enumerable.Range(-2, 5) select point + new TapePoint(x, y);

    private double Clearance(TapePoint point)
    {
        var least = double.MaxValue;
        for (var i = 0; i < _sides.Count; i++)
            least = Math.Min(least, _sides[i].DistanceSquared(point));
        return least;
    }
}
