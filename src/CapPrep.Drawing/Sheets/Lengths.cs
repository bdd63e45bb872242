using System.Globalization;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Sheets;

/// <summary>Lengths as a bench reads them: millimeters to 0.1, inches to the nearest sixteenth.</summary>
internal static class Lengths
{
    private const double MmPerInch = 25.4;

    public static string Mm(double mm) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(mm, 1, MidpointRounding.AwayFromZero):0.#} mm");

    public static string Of(double mm, LengthUnits units) => units == LengthUnits.Mm ? Mm(mm) : $"{Mm(mm)} ({Inches(mm)})";

    /// <summary>For example <c>1/2 in</c>, <c>2 3/16 in</c>.</summary>
    public static string Inches(double mm)
    {
        var sixteenths = (int)Math.Round(Math.Abs(mm) * 16 / MmPerInch, MidpointRounding.AwayFromZero);
        var (whole, part) = (sixteenths / 16, sixteenths % 16);
        var below = 16;
        while (part > 0 && part % 2 == 0)
            (part, below) = (part / 2, below / 2);
        var sign = mm < 0 && sixteenths > 0 ? "-" : "";
        return part == 0 ? Join($"{whole} in") : whole == 0 ? Join($"{part}/{below} in") : Join($"{whole} {part}/{below} in");

        string Join(FormattableString text) => sign + text.ToString(CultureInfo.InvariantCulture);
    }
}
