using System.Globalization;

namespace CapPrep.Engine.Checks;

/// <summary>How figures are written in sentences.</summary>
internal static class Figure
{
    /// <summary>A length in mm to 0.1, with its unit.</summary>
    internal static string Mm(double value) => Plain(value, 1) + " mm";

    /// <summary>A number with at most so many decimals, without trailing zeros.</summary>
    internal static string Plain(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.####", CultureInfo.InvariantCulture);
    }

    /// <summary>A count with its noun: <c>1 cap</c>, <c>48 caps</c>.</summary>
    internal static string Count(int count, string noun) => Count(count, noun, noun + "s");

    internal static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
