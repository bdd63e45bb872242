using System.Globalization;

namespace CapPrep.Engine.Measures;

/// <summary>A color as the eye sees it: CIE 1976 L*a*b* under daylight D65, 2 degree observer.</summary>
/// <param name="L">Lightness, 0 to 100.</param>
/// <param name="A">Green to red.</param>
/// <param name="B">Blue to yellow.</param>
public readonly record struct LabColor(double L, double A, double B)
{
    /// <summary>The color of a screen value (IEC 61966-2-1).</summary>
    /// <param name="rgb"><c>#RRGGBB</c>.</param>
    public static LabColor Of(string rgb)
    {
        var (red, green, blue) = (Linear(rgb, 1), Linear(rgb, 3), Linear(rgb, 5));
        var x = Curve(((0.4124564 * red) + (0.3575761 * green) + (0.1804375 * blue)) / 0.95047);
        var y = Curve((0.2126729 * red) + (0.7151522 * green) + (0.0721750 * blue));
        var z = Curve(((0.0193339 * red) + (0.1191920 * green) + (0.9503041 * blue)) / 1.08883);
        return new((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double Linear(string rgb, int at)
    {
        var share = int.Parse(rgb.AsSpan(at, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) / 255.0;
        if (share <= 0.04045)
            return share / 12.92;
        var value = (share + 0.055) / 1.055;
        return value * value * Trig.Root(value * value, 5);
    }

    private static double Curve(double share)
    {
        const double edge = 6.0 / 29;
        return share > edge * edge * edge ? Trig.Root(share, 3) : (share / (3 * edge * edge)) + (4.0 / 29);
    }
}
