namespace CapPrep.Engine.Measures;

/// <summary>
/// Angles and a few curves with nothing but the four operations and square roots, so that every system gives the same
/// digits.
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

    /// <summary>Sine and cosine of an angle in radians.</summary>
    public static (double Sine, double Cosine) SineAndCosine(double radians)
    {
        var degrees = radians * DegreesPerRadian;
        return (Sine(degrees), Cosine(degrees));
    }

    /// <summary>Cosine of an angle in degrees, right to 1e-12.</summary>
    public static double Cosine(double degrees)
    {
        var angle = Math.Abs(degrees) % 360;
        if (angle > 180)
            angle = 360 - angle;
        return angle > 90 ? -AcuteCosine(180 - angle) : AcuteCosine(angle);
    }

    /// <summary>Sine of an angle in degrees.</summary>
    public static double Sine(double degrees) => Cosine(degrees - 90);

    /// <summary>e to the power of a number from -700 to 0, right to 1e-12.</summary>
    public static double Exponential(double power)
    {
        var small = power / 4096;
        var sum = 1 + (small * (1 + (small / 2 * (1 + (small / 3 * (1 + (small / 4)))))));
        for (var k = 0; k < 12; k++)
            sum *= sum;
        return sum;
    }

    /// <summary>The root of so many-th degree of a positive number of at most 100, right to 1e-12.</summary>
    public static double Root(double value, int degree)
    {
        var root = Math.Max(1, value);
        for (var k = 0; k < 200; k++)
        {
            var power = 1.0;
            for (var i = 1; i < degree; i++)
                power *= root;
            var next = (((degree - 1) * root) + (value / power)) / degree;
            if (next >= root)
                break;
            root = next;
        }

        return root;
    }

    private static double AcuteCosine(double degrees)
    {
        var square = degrees / DegreesPerRadian * (degrees / DegreesPerRadian);
        var sum = 1.0;
        for (var k = 18; k >= 2; k -= 2)
            sum = 1 - (square / (k * (k - 1)) * sum);
        return sum;
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
