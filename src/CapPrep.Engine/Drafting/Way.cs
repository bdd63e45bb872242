using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Drafting;

/// <summary>A line through points in tape units, walked by length.</summary>
/// <param name="points">At least one point.</param>
public sealed class Way(IReadOnlyList<TapePoint> points)
{
    private readonly double[] _lengths = [.. Enumerable.Range(1, points.Count - 1).Select(i => Distance(points[i - 1], points[i]))];

    /// <summary>Length in tape units.</summary>
    public double Length => _lengths.Sum();

    /// <summary>The same line from its other end.</summary>
    public Way Backward() => new([.. points.Reverse()]);

    /// <summary>The point at a share of the length, 0 to 1, to the nearest unit.</summary>
    public TapePoint At(double share)
    {
        var rest = share * Length;
        for (var leg = 0; leg < _lengths.Length; leg++)
        {
            if (rest <= _lengths[leg] || leg == _lengths.Length - 1)
                return Between(points[leg], points[leg + 1], _lengths[leg] == 0 ? 0 : rest / _lengths[leg]);
            rest -= _lengths[leg];
        }

        return points[0];
    }

    /// <summary>The given points and, between them, as few more as keep every step within a length.</summary>
    public IEnumerable<TapePoint> InStitches(int stitchLength)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stitchLength, 1);
        return Steps();

        IEnumerable<TapePoint> Steps()
        {
            yield return points[0];
            for (var leg = 0; leg < _lengths.Length; leg++)
            {
                var steps = Math.Max(1, (int)Math.Ceiling(_lengths[leg] / stitchLength));
                for (var k = 1; k <= steps; k++)
                    yield return Between(points[leg], points[leg + 1], (double)k / steps);
            }
        }
    }

    /// <summary>The point between two, at a share of the way from the first to the second, to the nearest unit.</summary>
    public static TapePoint Between(TapePoint from, TapePoint to, double share) => new(
        Nearest(from.X + (share * (to.X - from.X))), Nearest(from.Y + (share * (to.Y - from.Y))));

    /// <summary>The point a length away in the direction of another; the point itself when both are one.</summary>
    public static TapePoint Toward(TapePoint from, TapePoint to, int length) =>
        from == to ? from : Between(from, to, length / Distance(from, to));

    private static double Distance(TapePoint from, TapePoint to)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    private static int Nearest(double value) => (int)Math.Floor(value + 0.5);
}
