using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;

namespace CapPrep.Service.Results;

/// <summary>Writes the lines of letters of the received tape. Lines, blocks and elements count from 1.</summary>
internal static class TextLineJson
{
    public static void Write(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteStartArray("textLines");
        foreach (var line in preparation.TextLines)
            WriteLine(writer, line, preparation);
        writer.WriteEndArray();
    }

    private static void WriteLine(Utf8JsonWriter writer, TextLine line, Preparation preparation)
    {
        writer.WriteStartObject();
        writer.WriteNumber("line", line.Index + 1);
        writer.Numbers("blocks", line.Elements.Select(element => preparation.Reading.Elements[element].Block).Distinct());
        writer.WriteString("letters", Words<LetterMake>.Standard.Of(line.Make));
        writer.WriteNumber("glyphs", line.Glyphs.Count);
        writer.Mm("letterHeightMm", line.LetterHeightMm);
        WriteHeight(writer, "capHeightMm", line.CapHeightMm);
        WriteHeight(writer, "xHeightMm", line.XHeightMm);
        writer.Mm("strokeWidthMm", line.StrokeWidthMm);
        WriteBase(writer, line.Base);
        writer.Box("boxMm", line.Box.ToMillimeters());
        writer.WriteBoolean("connected", line.IsConnected);
        writer.WriteBoolean("tagline", line.IsTagline);
        writer.WriteBoolean("sure", line.Sure);
        writer.Numbers("elements", line.Elements.Select(element => element + 1));
        writer.WriteEndObject();
    }

    private static void WriteHeight(Utf8JsonWriter writer, string name, double? height)
    {
        if (height is { } millimeters)
            writer.Mm(name, millimeters);
    }

    private static void WriteBase(Utf8JsonWriter writer, BaseLine line)
    {
        writer.WriteStartObject("base");
        writer.WriteBoolean("arc", line.IsArc);
        WritePoint(writer, "startMm", line.Start);
        WritePoint(writer, "endMm", line.End);
        WriteHeight(writer, "radiusMm", line.RadiusMm);
        writer.Mm("riseMm", line.RiseMm);
        writer.WriteNumber("tiltDeg", Figures.Rounded(line.TiltDegrees, 1));
        writer.Mm("lengthMm", line.LengthMm);
        writer.WriteEndObject();
    }

    private static void WritePoint(Utf8JsonWriter writer, string name, PointMm point)
    {
        writer.WriteStartObject(name);
        writer.Mm("x", point.X);
        writer.Mm("y", point.Y);
        writer.WriteEndObject();
    }
}
