namespace CapPrep.Drawing.Sheets;

/// <summary>
/// Leaves out points that a line can do without: what is drawn stays within a tolerance of every point left out
/// (Douglas and Peucker, 1973). Whole numbers only.
/// </summary>
internal static class Thinning
{
    /// <summary>Lines are cut here, which keeps the cost in step with their length.</summary>
    private const int ChunkPoints = 256;

    /// <param name="tolerance">Greatest distance of a point left out, 0.01 mm.</param>
    public static IReadOnlyList<SheetPoint> Reduce(IReadOnlyList<SheetPoint> line, int tolerance)
    {
        if (line.Count < 3)
            return line;
        var kept = new bool[line.Count];
        for (var first = 0; first < line.Count - 1; first += ChunkPoints)
            Keep(line, kept, first, Math.Min(first + ChunkPoints, line.Count - 1), tolerance);
        return [.. line.Where((_, index) => kept[index])];
    }

    private static void Keep(IReadOnlyList<SheetPoint> line, bool[] kept, int start, int end, int tolerance)
    {
        kept[start] = kept[end] = true;
        var spans = new Stack<(int First, int Last)>();
        spans.Push((start, end));
        while (spans.TryPop(out var span))
        {
            var (index, distance) = Farthest(line, span.First, span.Last);
            if (distance <= (double)tolerance * tolerance)
                continue;
            kept[index] = true;
            spans.Push((span.First, index));
            spans.Push((index, span.Last));
        }
    }

    /// <summary>The point farthest from the straight piece between two, and its squared distance.</summary>
    private static (int Index, double Distance) Farthest(IReadOnlyList<SheetPoint> line, int first, int last)
    {
        var (farthest, most) = (first, -1.0);
        for (var i = first + 1; i < last; i++)
        {
            var distance = SquaredDistance(line[first], line[last], line[i]);
            if (distance > most)
                (farthest, most) = (i, distance);
        }

        return (farthest, most);
    }

    private static double SquaredDistance(SheetPoint a, SheetPoint b, SheetPoint p)
    {
        long dx = b.X - a.X, dy = b.Y - a.Y, px = p.X - a.X, py = p.Y - a.Y;
        var length = (dx * dx) + (dy * dy);
        var along = (px * dx) + (py * dy);
        if (along <= 0 || length == 0)
            return (px * px) + (py * py);
        if (along >= length)
            return ((px - dx) * (px - dx)) + ((py - dy) * (py - dy));
        double cross = (px * dy) - (py * dx);
        return cross * cross / length;
    }
}
