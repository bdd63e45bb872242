namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>
/// The needle holes of a design by cells of 1 mm. Cells are sorted, not spread out: a design of kilometers takes no more
/// room than one of centimeters.
/// </summary>
internal sealed class HoleMap
{
    private const int PointBits = 32;

    private readonly int[] _points;
    private readonly long[] _keys;

    private HoleMap(CellGrid grid, IReadOnlyList<HoleCell> cells, int[] points)
    {
        (Grid, Cells, _points) = (grid, cells, points);
        _keys = [.. cells.Select(cell => cell.Key.Packed)];
    }

    internal CellGrid Grid { get; }

    /// <summary>Those with a hole, sorted.</summary>
    internal IReadOnlyList<HoleCell> Cells { get; }

    /// <param name="subject">A seated design.</param>
    /// <param name="spans">Its stitches.</param>
    /// <param name="counts">Penetrations, counted from 0, whose holes count.</param>
    internal static HoleMap Of(Subject subject, SpanMap spans, Func<int, bool> counts)
    {
        var grid = new CellGrid(subject.Seated.Box);
        var sorted = Enumerable.Range(0, subject.Points.Count)
            .Where(counts)
            .SelectMany(point => grid.CellsOf(subject.Points.At(point)).Select(cell => Entry(cell, point)))
            .Order()
            .ToArray();
        var points = sorted.Select(PointOf).ToArray();
        var cells = new List<HoleCell>();
        for (int start = 0, end; start < sorted.Length; start = end)
        {
            var key = KeyOf(sorted[start]);
            for (end = start + 1; end < sorted.Length && KeyOf(sorted[end]) == key;)
                end++;
            cells.Add(Cell(subject, spans, grid, key, points, start, end));
        }

        return new(grid, cells, points);
    }

    /// <summary>The cell of that key; null when no hole lies in it.</summary>
    internal HoleCell? At(CellKey key) =>
        _keys.AsSpan().BinarySearch(key.Packed) is >= 0 and var found ? Cells[found] : null;

    /// <summary>Penetrations in a cell, counted from 0, rising.</summary>
    internal ReadOnlySpan<int> PointsIn(in HoleCell cell) => _points.AsSpan(cell.Start, cell.Count);

    private static HoleCell Cell(
        Subject subject, SpanMap spans, CellGrid grid, CellKey key, int[] points, int start, int end)
    {
        var (all, butTies) = (default(HoleMask), default(HoleMask));
        var (first, last) = (int.MaxValue, int.MinValue);
        foreach (var point in points.AsSpan(start, end - start))
        {
            var (x, y) = grid.Inside(key, subject.Points.At(point));
            all.Add(x, y);
            if (!spans.IsTie(point))
                butTies.Add(x, y);
            if (spans.At(point).Element is { } element)
                (first, last) = (Math.Min(first, element), Math.Max(last, element));
        }

        return new(key, all.Quarters, butTies.Quarters, first, last, start, end - start);
    }

    private static Int128 Entry(CellKey cell, int point) => ((Int128)cell.Packed << PointBits) | point;

    private static int PointOf(Int128 entry) => (int)(entry & int.MaxValue);

    private static CellKey KeyOf(Int128 entry) => CellKey.Of((long)(entry >> PointBits));
}
