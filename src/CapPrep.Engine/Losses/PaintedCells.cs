using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Losses;

/// <summary>Cells of 0.25 mm with the spans whose thread lies in them, the lowest first.</summary>
internal sealed class PaintedCells
{
    private readonly TapePoint _corner;
    private readonly int _left;
    private readonly int _bottom;
    private readonly int _columns;
    private readonly int[] _top;
    private readonly bool[] _leftOut;
    private readonly int[] _area;
    private readonly List<Layer> _layers = [];

    /// <param name="corner">Lower left of the received design, where the cells begin.</param>
    /// <param name="box">Box of everything that is painted, tape units.</param>
    /// <param name="spans">How many spans there are.</param>
    internal PaintedCells(TapePoint corner, Box box, int spans)
    {
        _corner = corner;
        (_left, _bottom) = (Column(box.Left), Row(box.Bottom));
        _columns = Column(box.Right) - _left + 1;
        _top = new int[_columns * (Row(box.Top) - _bottom + 1)];
        Array.Fill(_top, -1);
        _leftOut = new bool[_top.Length];
        _area = new int[spans];
    }

    internal int Cells => _top.Length;

    /// <summary>Cells with at least one span.</summary>
    internal int Painted => _top.Count(layer => layer >= 0);

    internal bool IsLeftOut(int cell) => _leftOut[cell];

    /// <summary>Cells of a span.</summary>
    internal int AreaOf(int span) => _area[span];

    /// <summary>Adds the thread from one place to another, on top, where its span does not lie yet.</summary>
    internal void Line(TapePoint from, TapePoint to, int span)
    {
        foreach (var cell in CellsOf(from, to))
        {
            if (Holds(cell, span))
                continue;
            _layers.Add(new(span, _top[cell]));
            _top[cell] = _layers.Count - 1;
            _area[span]++;
        }
    }

    private bool Holds(int cell, int span)
    {
        for (var layer = _top[cell]; layer >= 0; layer = _layers[layer].Below)
        {
            if (_layers[layer].Span == span)
                return true;
        }

        return false;
    }

    /// <summary>What lies in these cells is not compared.</summary>
    internal void LeaveOut(TapePoint from, TapePoint to)
    {
        foreach (var cell in CellsOf(from, to))
            _leftOut[cell] = true;
    }

    internal int[] BottomUp(int cell)
    {
        if (_top[cell] < 0)
            return [];
        var spans = new List<int>();
        for (var layer = _top[cell]; layer >= 0; layer = _layers[layer].Below)
            spans.Add(_layers[layer].Span);
        spans.Reverse();
        return [.. spans];
    }

    /// <summary>One cell for each step along the longer side of the way, the same in either sense.</summary>
    private IEnumerable<int> CellsOf(TapePoint from, TapePoint to)
    {
        var (ax, ay, bx, by) = (Column(from.X), Row(from.Y), Column(to.X), Row(to.Y));
        if (bx < ax || (bx == ax && by < ay))
            (ax, ay, bx, by) = (bx, by, ax, ay);
        var (wide, high) = (bx - ax, Math.Abs(by - ay));
        var (steps, aside) = (Math.Max(wide, high), Math.Min(wide, high));
        for (var step = 0; step <= steps; step++)
        {
            var turned = steps == 0 ? 0 : ((step * aside) + steps - 1 - (steps / 2)) / steps;
            var (x, y) = high > wide ? (turned, step) : (step, turned);
            yield return ((ay + (by < ay ? -y : y) - _bottom) * _columns) + ax + x - _left;
        }
    }

    private int Column(int x) => CellOf(x - _corner.X);

    private int Row(int y) => CellOf(y - _corner.Y);

    /// <summary>floor(position / 2.5).</summary>
    private static int CellOf(int position) => position >= 0 ? position * 2 / 5 : -((4 - (position * 2)) / 5);

    private readonly record struct Layer(int Span, int Below);
}
