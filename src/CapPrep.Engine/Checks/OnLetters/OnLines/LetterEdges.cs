using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>How high above the base line the letters of a line begin and end, mm.</summary>
internal sealed record LetterEdges(Edge Bottoms, Edge Tops)
{
    internal static LetterEdges Of(CapPoints points, TextLine line)
    {
        var letters = line.Glyphs.Select(glyph => Of(points, line.Base, glyph)).ToArray();
        return new(new(letters.Select(letter => letter.Bottom)), new(letters.Select(letter => letter.Top)));
    }

    private static (double Bottom, double Top) Of(CapPoints points, BaseLine line, Glyph glyph)
    {
        var (bottom, top) = (double.MaxValue, double.MinValue);
        foreach (var (first, last) in glyph.Strokes)
        {
            for (var point = first; point <= last; point++)
            {
                var height = HeightMm(line, points.At(point));
                (bottom, top) = (Math.Min(bottom, height), Math.Max(top, height));
            }
        }

        return (bottom, top);
    }

    private static double HeightMm(BaseLine line, TapePoint point)
    {
        var (x, y) = (point.X / (double)Tenths.PerMillimeter, point.Y / (double)Tenths.PerMillimeter);
        return line is { CenterMm: { } center, RadiusMm: { } radius }
            ? (line.RiseMm >= 0 ? 1 : -1) * (Length(x - center.X, y - center.Y) - radius)
            : (((line.End.X - line.Start.X) * (y - line.Start.Y)) - ((line.End.Y - line.Start.Y) * (x - line.Start.X)))
                / Length(line.End.X - line.Start.X, line.End.Y - line.Start.Y);
    }

    private static double Length(double x, double y) => Math.Sqrt((x * x) + (y * y));
}

/// <summary>One edge of a line of letters: the height of each of them, mm.</summary>
internal sealed class Edge
{
    private readonly double[] _heights;

    internal Edge(IEnumerable<double> heights) => _heights = [.. heights.Order()];

    internal int Count => _heights.Length;

    /// <summary>Mean distance from the middle height: the median distance says nothing where most letters agree.</summary>
    internal double Deviation => _heights.Sum(height => Math.Abs(height - _heights[Count / 2])) / Count;

    /// <summary>Letters that reach at least so far below the level of the higher ones.</summary>
    internal int Below(double reachMm) => _heights.Count(height => height <= _heights[3 * Count / 4] - reachMm);

    /// <summary>Letters that reach at least so far above the level of the lower ones.</summary>
    internal int Above(double reachMm) => _heights.Count(height => height >= _heights[Count / 4] + reachMm);
}
