namespace CapPrep.FaultCorpus.Geometry;

/// <summary>A line through points, walked by length, mm.</summary>
public sealed class Curve
{
    private readonly double[] _at;

    public Curve(params IReadOnlyList<Vec> points)
    {
        Points = [.. points.Where((point, k) => k == 0 || Vec.Distance(point, points[k - 1]) > 1e-6)];
        _at = new double[Points.Count];
        for (var k = 1; k < Points.Count; k++)
            _at[k] = _at[k - 1] + Vec.Distance(Points[k - 1], Points[k]);
    }

    public IReadOnlyList<Vec> Points { get; }

    public double Length => _at[^1];

    public Vec Start => Points[0];

    public Vec End => Points[^1];

    public bool IsClosed => Vec.Distance(Start, End) < 1e-3;

    public static Curve Arc(Vec center, double radiusX, double radiusY, double from, double to, int steps = 24) => new(
        [.. Enumerable.Range(0, steps + 1).Select(k =>
        {
            var (sin, cos) = Math.SinCos((from + ((to - from) * k / steps)) * Math.PI / 180);
            return center + new Vec(radiusX * cos, radiusY * sin);
        })]);

    public static Curve Circle(Vec center, double radius, double from = -90) => Arc(center, radius, radius, from, from + 360, 96);

    /// <summary>A smooth line through the points (Catmull-Rom).</summary>
    public static Curve Smooth(params IReadOnlyList<Vec> knots)
    {
        var points = new List<Vec> { knots[0] };
        for (var k = 0; k + 1 < knots.Count; k++)
        {
            var (a, b, c, d) = (knots[Math.Max(k - 1, 0)], knots[k], knots[k + 1], knots[Math.Min(k + 2, knots.Count - 1)]);
            for (var step = 1; step <= 8; step++)
                points.Add(Spline(a, b, c, d, step / 8.0));
        }

        return new(points);
    }

    public Vec At(double length)
    {
        var (k, share) = Find(length);
        return Vec.Toward(Points[k], Points[k + 1], share);
    }

    /// <summary>Direction, smoothed over the neighboring legs where they turn softly.</summary>
    public Vec Direction(double length)
    {
        var (k, share) = Find(length);
        var own = (Points[k + 1] - Points[k]).Unit;
        var other = share < 0.5 ? k - 1 : k + 1;
        if (IsClosed)
            other = (other + Points.Count - 1) % (Points.Count - 1);
        if (other < 0 || other + 1 >= Points.Count)
            return own;
        var next = (Points[other + 1] - Points[other]).Unit;
        if (Vec.Dot(own, next) < 0.7)
            return own;
        var weight = Math.Abs(share - 0.5);
        return ((own * (1 - weight)) + (next * weight)).Unit;
    }

    public Curve Backward() => new([.. Points.Reverse()]);

    public Curve Part(double from, double to)
    {
        if (from > to)
            return Part(to, from).Backward();
        return new([At(from), .. Points.Where((_, k) => _at[k] > from + 1e-6 && _at[k] < to - 1e-6), At(to)]);
    }

    public Curve Mapped(Func<Vec, Vec> map) => new([.. Points.Select(map)]);

    /// <summary>Moved sideways, to the left of its direction.</summary>
    public Curve Beside(double left) => new(
        [.. Points.Select((_, k) => Points[k] + (Direction(Math.Clamp(_at[k], 1e-6, Length - 1e-6)).Left * left))]);

    /// <summary>A closed curve begun at another of its places.</summary>
    public Curve From(double length) => length < 1e-6 || length > Length - 1e-6
        ? this
        : new([.. Part(length, Length).Points, .. Part(0, length).Points.Skip(1)]);

    /// <summary>Length at which the curve comes nearest to a place, and how near.</summary>
    public (double At, double Distance) Nearest(Vec place)
    {
        var best = (At: 0.0, Distance: double.MaxValue);
        for (var k = 0; k + 1 < Points.Count; k++)
        {
            var leg = Points[k + 1] - Points[k];
            var share = Math.Clamp(Vec.Dot(place - Points[k], leg) / Vec.Dot(leg, leg), 0, 1);
            var distance = Vec.Distance(place, Points[k] + (leg * share));
            if (distance < best.Distance - 1e-9)
                best = (_at[k] + (leg.Length * share), distance);
        }

        return best;
    }

    /// <summary>Its points at even steps not longer than given, both ends included.</summary>
    public IEnumerable<Vec> Steps(double longest)
    {
        var count = Math.Max(1, (int)Math.Ceiling((Length / longest) - 1e-6));
        return Enumerable.Range(0, count + 1).Select(k => At(Length * k / count));
    }

    private (int Leg, double Share) Find(double length)
    {
        var k = 0;
        while (k + 2 < Points.Count && _at[k + 1] <= length)
            k++;
        return (k, Math.Clamp((length - _at[k]) / (_at[k + 1] - _at[k]), 0, 1));
    }

    private static Vec Spline(Vec a, Vec b, Vec c, Vec d, double t) =>
        ((b * 2) + ((c - a) * t) + (((a * 2) - (b * 5) + (c * 4) - d) * (t * t)) + (((b * 3) - a - (c * 3) + d) * (t * t * t))) / 2;
}
