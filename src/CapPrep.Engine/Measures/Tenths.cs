using System.Globalization;

namespace CapPrep.Engine.Measures;

/// <summary>
/// A length on a tape in its own unit, 0.1 mm (fact row T1: EduTech Wiki, "Embroidery format DST").
/// Whole numbers only; millimeters exist at the edges of the program.
/// </summary>
public readonly record struct Tenths(int Value) : IComparable<Tenths>
{
    /// <summary>Tape units in one millimeter.</summary>
    public const int PerMillimeter = 10;

    /// <summary>The same length in millimeters, exact to 0.1 mm.</summary>
    public double Millimeters => Value / 10.0;

    /// <summary>The nearest whole number of tape units; halves go away from zero.</summary>
    public static Tenths FromMillimeters(double millimeters) =>
        new((int)Math.Round(millimeters * PerMillimeter, MidpointRounding.AwayFromZero));

    public int CompareTo(Tenths other) => Value.CompareTo(other.Value);

    public static Tenths operator +(Tenths a, Tenths b) => new(a.Value + b.Value);

    public static Tenths operator -(Tenths a, Tenths b) => new(a.Value - b.Value);

    public static Tenths operator -(Tenths a) => new(-a.Value);

    public static bool operator <(Tenths a, Tenths b) => a.Value < b.Value;

    public static bool operator >(Tenths a, Tenths b) => a.Value > b.Value;

    public static bool operator <=(Tenths a, Tenths b) => a.Value <= b.Value;

    public static bool operator >=(Tenths a, Tenths b) => a.Value >= b.Value;

    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);
}
