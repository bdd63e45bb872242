using System.Text.Json;
using CapPrep.Engine.Desk;

namespace CapPrep.Service.Results;

/// <summary>Writes what the order desk can do about a design that is too large.</summary>
internal static class WaysOutJson
{
    public static void Write(Utf8JsonWriter writer, WaysOut ways)
    {
        writer.WriteStartObject("waysOut");
        writer.WriteStartArray("otherStyles");
        foreach (var style in ways.OtherStyles)
        {
            writer.WriteStartObject();
            writer.WriteString("id", style.Id);
            writer.WriteString("name", style.Name);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        if (ways.Scaled is { } scaled)
            WriteScaled(writer, scaled);
        if (ways.Redigitized is { } size)
            WriteSize(writer, size);
        writer.WriteEndObject();
    }

    private static void WriteScaled(Utf8JsonWriter writer, ScaledTape scaled)
    {
        writer.WriteStartObject("scaledTape");
        writer.Share("scale", scaled.Scale);
        writer.Mm("widthMm", scaled.WidthMm);
        writer.Mm("heightMm", scaled.HeightMm);
        if (scaled.SmallestLetterMm > 0)
            writer.Mm("smallestLetterMm", scaled.SmallestLetterMm);
        writer.WriteString("says", scaled.Says);
        writer.WriteEndObject();
    }

    private static void WriteSize(Utf8JsonWriter writer, NewSize size)
    {
        writer.WriteStartObject("newDigitizing");
        writer.Mm("widthMm", size.WidthMm);
        writer.Mm("heightMm", size.HeightMm);
        writer.WriteString("says", size.Says);
        writer.WriteEndObject();
    }
}
