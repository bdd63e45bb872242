using System.Collections.Concurrent;
using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>How wide the closed openings of letters are, found by looking at a raster of the letter.</summary>
internal static class Counters
{
    private const double Cell = 0.12;

    private static readonly ConcurrentDictionary<(char Sign, double Stroke, double Wide), double?> Known = [];

    /// <summary>Diameter of the largest circle in the smallest closed opening, mm; null: the letter has none.</summary>
    internal static double? Least(char sign, Face face)
    {
        // Looked at 10 mm high: the opening grows with the letter.
        var stroke = Math.Round(10 * face.Stroke / face.Height, 1);
        var known = Known.GetOrAdd(
            (sign, stroke, face.Wide), static key => Find(key.Sign, new() { Height = 10, Stroke = key.Stroke, Wide = key.Wide }));
        return known * face.Height / 10;
    }

    /// <summary>The same for exactly this letter.</summary>
    internal static double? Exact(char sign, Face face) => Find(sign, face);

    private static double? Find(char sign, Face face)
    {
        var letter = new Letter(sign, face, static own => own, Leftward: false) { Name = "" };
        var strokes = letter.Strokes();
        var box = Rect.Of(strokes.SelectMany(stroke => stroke.Points)).Grown(face.Stroke + 0.3);
        var (columns, rows) = ((int)(box.Width / Cell) + 1, (int)(box.Height / Cell) + 1);
        var free = new double[columns, rows];
        for (var x = 0; x < columns; x++)
        {
            for (var y = 0; y < rows; y++)
            {
                var place = new Vec(box.Left + (x * Cell), box.Bottom + (y * Cell));
                free[x, y] = strokes.Min(stroke => stroke.Nearest(place).Distance) - (face.Stroke / 2);
            }
        }

        Flood(free, 0, 0);
        double? least = null;
        for (var x = 0; x < columns; x++)
        {
            for (var y = 0; y < rows; y++)
            {
                if (free[x, y] > 0.05)
                    least = Math.Min(least ?? double.MaxValue, 2 * Flood(free, x, y));
            }
        }

        return least;
    }

    /// <summary>Takes everything open that hangs together, and says how far from an edge its middle lies.</summary>
    private static double Flood(double[,] free, int fromX, int fromY)
    {
        var most = 0.0;
        var open = new Stack<(int X, int Y)>([(fromX, fromY)]);
        while (open.TryPop(out var at))
        {
            var (x, y) = at;
            if (x < 0 || y < 0 || x >= free.GetLength(0) || y >= free.GetLength(1) || free[x, y] <= 0)
                continue;
            most = Math.Max(most, free[x, y]);
            free[x, y] = 0;
            foreach (var next in new[] { (x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1) })
                open.Push(next);
        }

        return most;
    }
}
