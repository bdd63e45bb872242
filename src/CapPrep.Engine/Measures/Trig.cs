namespace CapPrep.Engine.Measures;

/// <summary>
/// Angles with nothing but the four operations and square roots, so that every system gives the same digits.
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

    /// <summary>Angle of a vector from the x axis, counter-clockwise, from -pi to pi.</summary>
    public static double Radians(double x, double y)
    {
        var degrees = Degrees(x, y);
        return (degrees > 180 ? degrees - 360 : degrees) / DegreesPerRadian;
    }

    /// <summary>Sine and cosine of an angle from -4 pi to 4 pi, right to 12 digits: by their series at a sixteenth of it, doubled.</summary>
    public static (double Sine, double Cosine) SineAndCosine(double radians)
    {
        var part = radians / 16;
        var square = part * part;
        var sine = part * (1 - (square / 6 * (1 - (square / 20 * (1 - (square / 42 * (1 - (square / 72))))))));
        var cosine = 1 - (square / 2 * (1 - (square / 12 * (1 - (square / 30 * (1 - (square / 56 * (1 - (square / 90)))))))));
        for (var k = 0; k < 4; k++)
            (sine, cosine) = (2 * sine * cosine, (cosine * cosine) - (sine * sine));
        return (sine, cosine);
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
