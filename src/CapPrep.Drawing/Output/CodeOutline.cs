using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>
/// The edges of a code's dark area as closed rings, for even-odd filling: one area instead of many squares, so that
/// no hairline appears between modules.
/// </summary>
internal static class CodeOutline
{
    public static IReadOnlyList<IReadOnlyList<SheetPoint>> Rings(CodeMark code)
    {
        var edges = Edges(code.Rows);
        var rings = new List<IReadOnlyList<SheetPoint>>();
        for (var y = 0; y <= code.Rows.Count; y++)
            for (var x = 0; x <= code.Rows.Count; x++)
                while (edges.TryGetValue(new SheetPoint(x, y), out var ends) && ends.Count > 0)
                    rings.Add(Placed(Ring(edges, new SheetPoint(x, y)), code));
        return rings;
    }

    /// <summary>Edges between dark and light, the dark module on their right, by where they start.</summary>
    private static Dictionary<SheetPoint, List<SheetPoint>> Edges(IReadOnlyList<string> rows)
    {
        var edges = new Dictionary<SheetPoint, List<SheetPoint>>();
        for (var y = 0; y < rows.Count; y++)
            for (var x = 0; x < rows.Count; x++)
                if (Dark(rows, x, y))
                    AddModule(edges, rows, x, y);
        return edges;
    }

    private static void AddModule(
        Dictionary<SheetPoint, List<SheetPoint>> edges, IReadOnlyList<string> rows, int x, int y)
    {
        if (!Dark(rows, x, y - 1))
            Add(edges, new(x, y), new(x + 1, y));
        if (!Dark(rows, x + 1, y))
            Add(edges, new(x + 1, y), new(x + 1, y + 1));
        if (!Dark(rows, x, y + 1))
            Add(edges, new(x + 1, y + 1), new(x, y + 1));
        if (!Dark(rows, x - 1, y))
            Add(edges, new(x, y + 1), new(x, y));
    }

    private static bool Dark(IReadOnlyList<string> rows, int x, int y) =>
        y >= 0 && y < rows.Count && x >= 0 && x < rows[y].Length && rows[y][x] == '1';

    private static void Add(Dictionary<SheetPoint, List<SheetPoint>> edges, SheetPoint from, SheetPoint to)
    {
        if (!edges.TryGetValue(from, out var ends))
            edges[from] = ends = [];
        ends.Add(to);
    }

    private static List<SheetPoint> Ring(Dictionary<SheetPoint, List<SheetPoint>> edges, SheetPoint start)
    {
        var ring = new List<SheetPoint>();
        var at = start;
        do
        {
            var ends = edges[at];
            var next = ends[^1];
            ends.RemoveAt(ends.Count - 1);
            if (ring.Count < 2 || !Straight(ring[^2], ring[^1], next))
                ring.Add(next);
            else
                ring[^1] = next;
            at = next;
        }
        while (at != start);
        return ring;
    }

    private static bool Straight(SheetPoint a, SheetPoint b, SheetPoint c) =>
        (a.X == b.X && b.X == c.X) || (a.Y == b.Y && b.Y == c.Y);

    private static List<SheetPoint> Placed(List<SheetPoint> ring, CodeMark code)
    {
        var module = code.Box.Width / code.Rows.Count;
        return ring.ConvertAll(point => new SheetPoint(code.Box.X + (point.X * module), code.Box.Y + (point.Y * module)));
    }
}
