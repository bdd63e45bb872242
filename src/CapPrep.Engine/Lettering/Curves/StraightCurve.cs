using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Curves;

/// <summary>A straight base line.</summary>
/// <param name="origin">A point near it.</param>
/// <param name="up">How far it lies above the point, tape units.</param>
/// <param name="acrossX">Unit vector along it.</param>
/// <param name="acrossY">Its other half.</param>
internal sealed class StraightCurve(TapePoint origin, double up, double acrossX, double acrossY) : Curve
{
    public double AcrossX => acrossX;

    public double AcrossY => acrossY;

    // From the point to where the line meets x = 0.
    private readonly double _seam = acrossX == 0 ? 0 : (-origin.X + (up * acrossY)) / acrossX;

    /// <summary>Through two points, the first to the left; null when it is steeper than 60 degrees.</summary>
    public static StraightCurve? Through(TapePoint left, TapePoint right)
    {
        double x = right.X - left.X, y = right.Y - left.Y;
        var length = Math.Sqrt((x * x) + (y * y));
        return x <= 0 || y * y > 3 * x * x ? null : new(left, 0, x / length, y / length);
    }

    public override Frame At(TapePoint place)
    {
        double x = place.X - origin.X, y = place.Y - origin.Y;
        return new(place, acrossX, acrossY, (x * acrossX) + (y * acrossY) - _seam, (y * acrossX) - (x * acrossY) - up);
    }

    public override double UpOf(TapePoint place) =>
        ((place.Y - origin.Y) * acrossX) - ((place.X - origin.X) * acrossY) - up;

    public override (double X, double Y) PointAt(double along)
    {
        var way = along + _seam;
        return (origin.X + (way * acrossX) - (up * acrossY), origin.Y + (way * acrossY) + (up * acrossX));
    }
}
