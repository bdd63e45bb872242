using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Losses;

/// <summary>Cells of 0.25 mm with the spans whose thread lies in them, the lowest first.</summary>
internal sealed class PaintedCells
{
    // In quarters of a tape unit, so that a cell of 2.5 tape units is whole.
    private const int Quarters = 4;
    private const int CellQuarters = 10;

    private readonly int _left;
    private readonly int _bottom;
    private readonly int _columns;
    private readonly int[] _top;
    private readonly bool[] _leftOut;
    private readonly int[] _area;
    private readonly List<Layer> _layers = [];

    /// <param name="box">Box of everything that is painted, tape units.</param>
    /// <param name="spans">How many spans there are.</param>
    internal PaintedCells(Box box, int spans)
    {
        (_left, _bottom) = (CellOf(box.Left), CellOf(box.Bottom));
        _columns = CellOf(box.Right) - _left + 1;
        _top = new int[_columns * (CellOf(box.Top) - _bottom + 1)];
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

    /// <summary>Adds the thread from one place to another, on top; a span is painted in one go.</summary>
    internal void Line(TapePoint from, TapePoint to, int span)
    {
        foreach (var cell in CellsOf(from, to))
        {
            if (_top[cell] >= 0 && _layers[_top[cell]].Span == span)
                continue;
            _layers.Add(new(span, _top[cell]));
            _top[cell] = _layers.Count - 1;
            _area[span]++;
        }
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

    /// <summary>Every cell that a straight way enters, looked at once per tape unit.</summary>
    private IEnumerable<int> CellsOf(TapePoint from, TapePoint to)
    {
        var way = to - from;
        var steps = Math.Max(1, way.Reach);
        var last = -1;
        for (var step = 0; step <= steps; step++)
        {
            var cell = IndexOf((from.X * Quarters) + Share(way.X, step, steps), (from.Y * Quarters) + Share(way.Y, step, steps));
            if (cell != last)
                yield return cell;
            last = cell;
        }
    }

    private static int Share(int way, int step, int steps) => (int)((long)way * Quarters * step / steps);

    private int IndexOf(int x, int y) => ((FloorOf(y) - _bottom) * _columns) + FloorOf(x) - _left;

    private static int CellOf(int position) => FloorOf(position * Quarters);

    private static int FloorOf(int quarters) => quarters >= 0 ? quarters / CellQuarters : -((CellQuarters - 1 - quarters) / CellQuarters);

    private readonly record struct Layer(int Span, int Below);
}
