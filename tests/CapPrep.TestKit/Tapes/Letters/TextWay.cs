using CapPrep.Engine.Measures;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>A straight or round base line: where a place along it and above it lies on the tape.</summary>
/// <param name="middle">Middle of the line, tape units.</param>
/// <param name="tiltDegrees">Direction of the line in its middle, counter-clockwise.</param>
/// <param name="radius">Of a line that rises in its middle when above 0, hangs when below; 0: straight. Tape units.</param>
internal sealed class TextWay(TapePoint middle, double tiltDegrees, double radius)
{
    /// <param name="along">From the middle to the right, tape units along the base line.</param>
    /// <param name="up">From the base line up.</param>
    public TapePoint At(double along, double up)
    {
        var (x, y) = radius == 0 ? (along, up) : Round(along / radius, up);
        var (sine, cosine) = Math.SinCos(tiltDegrees * Math.PI / 180);
        return new(Nearest(middle.X + (x * cosine) - (y * sine)), Nearest(middle.Y + (x * sine) + (y * cosine)));
    }

    private (double X, double Y) Round(double angle, double up)
    {
        var (sine, cosine) = Math.SinCos(angle);
        return ((radius + up) * sine, ((radius + up) * cosine) - radius);
    }

    private static int Nearest(double value) => (int)Math.Floor(value + 0.5);
}
