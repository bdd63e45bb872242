namespace CapPrep.Engine.Measures;

/// <summary>
/// Angles for reports, with nothing but the four operations, so that every system gives the same digits. Nothing is
/// decided by them.
/// </summary>
internal static class Trig
{
    private const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>Angle of a vector from the x axis, counter-clockwise, 0 to below 360 degrees, right to 0.001 degree.</summary>
    public static double Degrees(double x, double y)
    {
        if (x == 0 && y == 0)
            return 0;
        var (across, up) = (Math.Abs(x), Math.Abs(y));
        var steep = up > across;
        var angle = DegreesPerRadian * Arctangent(steep ? across / up : up / across);
        if (steep)
            angle = 90 - angle;
        if (x < 0)
            angle = 180 - angle;
        return y < 0 && angle > 0 ? 360 - angle : angle;
    }

    /// <summary>
    /// Arctangent of 0 to 1 by its continued fraction after one halving of the angle.
    /// </summary>
    private static double Arctangent(double tangent)
    {
        var half = tangent / (1 + Math.Sqrt(1 + (tangent * tangent)));
        var square = half * half;
        var fraction = 17.0;
        for (var k = 8; k >= 1; k--)
            fraction = ((2 * k) - 1) + (k * k * square / fraction);
        return 2 * half / fraction;
    }
}
