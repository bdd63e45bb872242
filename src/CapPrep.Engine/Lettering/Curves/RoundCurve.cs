using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Curves;

/// <summary>A base line that is a part of a circle.</summary>
/// <param name="origin">A point near it.</param>
/// <param name="middleX">Middle of the circle from that point, tape units.</param>
/// <param name="middleY">Its other half.</param>
/// <param name="radius">Tape units.</param>
/// <param name="hangs">Its middle lies lower than its ends: letters stand toward the middle of the circle.</param>
internal sealed class RoundCurve(TapePoint origin, double middleX, double middleY, double radius, bool hangs) : Curve
{
    private const double LeastRadius = 12 * Tenths.PerMillimeter;
    private const double LargestRadius = 400 * Tenths.PerMillimeter;

    // Way along the circle from straight over (or under) its middle to where it meets x = 0, or comes nearest.
    private readonly double _seam = WayToSeam(-origin.X - middleX, radius);

    public double Radius => radius;

    public bool Hangs => hangs;

    public (double X, double Y) Middle => (origin.X + middleX, origin.Y + middleY);

    /// <summary>Through three points; null when the radius is out of bounds.</summary>
    public static RoundCurve? Through(TapePoint left, TapePoint inner, TapePoint right)
    {
        var (a, b) = (inner - left, right - left);
        var cross = 2.0 * Fine.Cross(a, b);
        if (cross == 0)
            return null;
        double aa = Fine.Square(a), bb = Fine.Square(b);
        return Of(left, ((b.Y * aa) - (a.Y * bb)) / cross, ((a.X * bb) - (b.X * aa)) / cross, hangs: cross > 0);
    }

    /// <summary>Null when the radius is out of bounds.</summary>
    public static RoundCurve? Of(TapePoint origin, double middleX, double middleY, double radius, bool hangs) =>
        radius is >= LeastRadius and <= LargestRadius ? new(origin, middleX, middleY, radius, hangs) : null;

    private static RoundCurve? Of(TapePoint origin, double middleX, double middleY, bool hangs) =>
        Of(origin, middleX, middleY, Math.Sqrt((middleX * middleX) + (middleY * middleY)), hangs);

    public override Frame At(TapePoint place)
    {
        double x = place.X - origin.X - middleX, y = place.Y - origin.Y - middleY;
        var length = Math.Sqrt((x * x) + (y * y));
        if (length == 0)
            return new(place, 1, 0, 0, -radius);
        var side = hangs ? -1 : 1;
        var along = radius * Trig.Radians(side * y, x);
        return new(place, side * y / length, -side * x / length, along - _seam, side * (length - radius), hangs ? 0 : 1 / radius);
    }

    public override double UpOf(TapePoint place)
    {
        double x = place.X - origin.X - middleX, y = place.Y - origin.Y - middleY;
        var length = Math.Sqrt((x * x) + (y * y));
        return hangs ? radius - length : length - radius;
    }

    public override (double X, double Y) PointAt(double along)
    {
        var (sine, cosine) = Trig.SineAndCosine((along + _seam) / radius);
        return (Middle.X + (radius * sine), Middle.Y + ((hangs ? -1 : 1) * radius * cosine));
    }

    private static double WayToSeam(double x, double radius)
    {
        var across = Math.Clamp(x, -radius, radius);
        return radius * Trig.Radians(Math.Sqrt((radius * radius) - (across * across)), across);
    }
}
