using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Results;

/// <summary>
/// The one place where numbers leave: mm to 0.01, degrees to 0.1, shares to 0.0001, never minus zero. The engine has
/// rounded quantities of findings already.
/// </summary>
internal static class Figures
{
    public static void Mm(this Utf8JsonWriter writer, string name, double millimeters) =>
        writer.WriteNumber(name, Rounded(millimeters, 2));

    public static void Share(this Utf8JsonWriter writer, string name, double share) =>
        writer.WriteNumber(name, Rounded(share, 4));

    public static void Box(this Utf8JsonWriter writer, string name, BoxMm box)
    {
        writer.WritePropertyName(name);
        writer.BoxItem(box);
    }

    /// <summary>A box as the item of a list.</summary>
    public static void BoxItem(this Utf8JsonWriter writer, BoxMm box)
    {
        writer.WriteStartObject();
        writer.Mm("left", box.Left);
        writer.Mm("bottom", box.Bottom);
        writer.Mm("right", box.Right);
        writer.Mm("top", box.Top);
        writer.WriteEndObject();
    }

    public static void Point(this Utf8JsonWriter writer, string name, TapePoint point)
    {
        writer.WriteStartObject(name);
        writer.Mm("x", point.X / 10.0);
        writer.Mm("y", point.Y / 10.0);
        writer.WriteEndObject();
    }

    public static void Quantity(this Utf8JsonWriter writer, string name, Quantity quantity)
    {
        writer.WriteStartObject(name);
        writer.WriteNumber("value", Rounded(quantity.Value, 4));
        writer.WriteString("unit", quantity.Unit);
        writer.WriteEndObject();
    }

    public static void Text(this Utf8JsonWriter writer, string name, string? text)
    {
        if (text is not null)
            writer.WriteString(name, text);
    }

    public static void Numbers(this Utf8JsonWriter writer, string name, IEnumerable<int> numbers)
    {
        writer.WriteStartArray(name);
        foreach (var number in numbers)
            writer.WriteNumberValue(number);
        writer.WriteEndArray();
    }

    public static double Rounded(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
}
