using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Puts a base line into the terms of the cap.</summary>
internal static class BaseLines
{
    /// <param name="curve">The line.</param>
    /// <param name="from">Where its first letter begins along it, sixteenths of a tape unit.</param>
    /// <param name="to">Where its last letter ends.</param>
    public static BaseLine Of(Curve curve, int from, int to)
    {
        var (start, end) = (PointOn(curve, from), PointOn(curve, to));
        double x = end.X - start.X, y = end.Y - start.Y;
        var round = curve as RoundCurve;
        return new()
        {
            Start = start,
            End = end,
            CenterMm = round is null ? null : Millimeters(round.Middle.X, round.Middle.Y),
            RadiusMm = round is null ? null : round.Radius / Tenths.PerMillimeter,
            RiseMm = round is null ? 0 : Rise(round, Math.Sqrt((x * x) + (y * y))),
            TiltDegrees = Tilt(x, y),
            LengthMm = Fine.Millimeters(to - from),
        };
    }

    private static double Rise(RoundCurve round, double chord)
    {
        var (radius, half) = (round.Radius / Tenths.PerMillimeter, chord / 2);
        var rise = radius - Math.Sqrt(Math.Max(0, (radius * radius) - (half * half)));
        return round.Hangs ? -rise : rise;
    }

    private static double Tilt(double x, double y)
    {
        var degrees = Trig.Degrees(x, y);
        return degrees > 180 ? degrees - 360 : degrees;
    }

    private static PointMm PointOn(Curve curve, int along)
    {
        var (x, y) = curve.PointAt(along / (double)Fine.PerTenth);
        return Millimeters(x, y);
    }

    private static PointMm Millimeters(double x, double y) => new(x / Tenths.PerMillimeter, y / Tenths.PerMillimeter);
}
