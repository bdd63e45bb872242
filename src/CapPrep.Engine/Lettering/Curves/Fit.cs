using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Curves;

/// <summary>Lays a base line under points.</summary>
internal static class Fit
{
    /// <summary>By the median of the slopes of all pairs, then by least squares over the points near it.</summary>
    /// <param name="feet">At least two.</param>
    /// <param name="near">How near, sixteenths of a tape unit.</param>
    public static StraightCurve? Straight(IReadOnlyList<TapePoint> feet, int near)
    {
        if (ByMedian(feet) is not { } first)
            return null;
        TapePoint[] close = [.. feet.Where(foot => IsNear(first, foot, near))];
        return close.Length < 2 ? first : BySquares(close) ?? first;
    }

    /// <summary>By the algebraic fit of a circle, again over the points near the first; null when it is no circle in bounds.</summary>
    /// <param name="feet">At least three.</param>
    /// <param name="near">How near, sixteenths of a tape unit.</param>
    public static RoundCurve? Round(IReadOnlyList<TapePoint> feet, int near)
    {
        if (Circle(feet) is not { } first)
            return null;
        TapePoint[] close = [.. feet.Where(foot => IsNear(first, foot, near))];
        return close.Length < 3 ? first : Circle(close) ?? first;
    }

    private static bool IsNear(Curve curve, TapePoint foot, int near) => Math.Abs(Frame.Whole(curve.At(foot).Up)) <= near;

    private static StraightCurve? ByMedian(IReadOnlyList<TapePoint> feet)
    {
        var slopes = new List<double>();
        for (var i = 0; i < feet.Count; i++)
        {
            for (var k = i + 1; k < feet.Count; k++)
            {
                if (feet[k].X != feet[i].X)
                    slopes.Add((double)(feet[k].Y - feet[i].Y) / (feet[k].X - feet[i].X));
            }
        }

        if (slopes.Count == 0)
            return null;
        var slope = Middle(slopes);
        var up = Middle(feet.Select(foot => foot.Y - feet[0].Y - (slope * (foot.X - feet[0].X))));
        return Line(feet[0], up, slope);
    }

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static StraightCurve? BySquares(TapePoint[] feet)
    {
        var origin = feet[0];
        double sumX = 0, sumY = 0, sumXX = 0, sumXY = 0;
        foreach (var foot in feet)
        {
            double x = foot.X - origin.X, y = foot.Y - origin.Y;
            (sumX, sumY, sumXX, sumXY) = (sumX + x, sumY + y, sumXX + (x * x), sumXY + (x * y));
        }

        var spread = (feet.Length * sumXX) - (sumX * sumX);
        if (spread == 0)
            return null;
        var slope = ((feet.Length * sumXY) - (sumX * sumY)) / spread;
        return Line(origin, (sumY - (slope * sumX)) / feet.Length, slope);
    }

    /// <summary>Null when it is steeper than 60 degrees.</summary>
    private static StraightCurve? Line(TapePoint origin, double above, double slope)
    {
        var length = Math.Sqrt(1 + (slope * slope));
        return slope * slope > 3 ? null : new(origin, above / length, 1 / length, slope / length);
    }

    private static RoundCurve? Circle(IReadOnlyList<TapePoint> feet)
    {
        var origin = feet[0];
        double meanX = 0, meanY = 0;
        foreach (var foot in feet)
            (meanX, meanY) = (meanX + foot.X - origin.X, meanY + foot.Y - origin.Y);
        (meanX, meanY) = (meanX / feet.Count, meanY / feet.Count);
        double xx = 0, xy = 0, yy = 0, zx = 0, zy = 0;
        foreach (var foot in feet)
        {
            double x = foot.X - origin.X - meanX, y = foot.Y - origin.Y - meanY;
            var square = (x * x) + (y * y);
            (xx, xy, yy, zx, zy) = (xx + (x * x), xy + (x * y), yy + (y * y), zx + (square * x), zy + (square * y));
        }

        var spread = (xx * yy) - (xy * xy);
        if (spread == 0)
            return null;
        double middleX = ((zx * yy) - (zy * xy)) / (2 * spread), middleY = ((zy * xx) - (zx * xy)) / (2 * spread);
        var radius = Math.Sqrt((middleX * middleX) + (middleY * middleY) + ((xx + yy) / feet.Count));
        return RoundCurve.Of(origin, meanX + middleX, meanY + middleY, radius, hangs: middleY > 0);
    }
}
