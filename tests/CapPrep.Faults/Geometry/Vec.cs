using System.Globalization;

namespace CapPrep.FaultCorpus.Geometry;

/// <summary>A place or a direction on the cap, mm: x from the center seam to the viewer's right, y from the brim seam up.</summary>
public readonly record struct Vec(double X, double Y)
{
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public Vec Unit => Length < 1e-9 ? new(1, 0) : this / Length;

    /// <summary>Turned a quarter to the left.</summary>
    public Vec Left => new(-Y, X);

    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y);

    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y);

    public static Vec operator *(Vec a, double scale) => new(a.X * scale, a.Y * scale);

    public static Vec operator /(Vec a, double scale) => new(a.X / scale, a.Y / scale);

    public static double Dot(Vec a, Vec b) => (a.X * b.X) + (a.Y * b.Y);

    public static Vec Toward(Vec from, Vec to, double share) => from + ((to - from) * share);

    public static double Distance(Vec a, Vec b) => (a - b).Length;

    /// <summary>Turned to the left about (0, 0).</summary>
    public Vec Turned(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new((X * cos) - (Y * sin), (X * sin) + (Y * cos));
    }

    public static Vec OnCircle(Vec center, double radius, double degrees) => center + new Vec(radius, 0).Turned(degrees);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X:0.00}, {Y:0.00})");
}
