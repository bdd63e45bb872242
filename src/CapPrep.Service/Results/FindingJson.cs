using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Results;

/// <summary>Writes a finding as the result shows it.</summary>
internal static class FindingJson
{
    public static void Write(Utf8JsonWriter writer, Finding finding)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number", finding.Number);
        writer.WriteString("rule", finding.Rule);
        writer.WriteString("severity", Words<Severity>.Standard.Of(finding.Severity));
        writer.WriteString("state", Words<FindingState>.Standard.Of(finding.State));
        writer.WriteNumber("count", finding.Count);
        writer.WriteString("message", finding.Message);
        if (finding.Measured is { } measured)
            writer.Quantity("measured", measured);
        WriteLimit(writer, finding.Limit);
        writer.WriteStartArray("places");
        foreach (var place in finding.Places)
            WritePlace(writer, place);
        writer.WriteEndArray();
        if (finding.Remedy is { } remedy)
            WriteRemedy(writer, remedy);
        writer.WriteEndObject();
    }

    private static void WriteLimit(Utf8JsonWriter writer, AppliedLimit limit)
    {
        writer.WriteStartObject("limit");
        writer.WriteString("is", Words<LimitIs>.Standard.Of(limit.Is));
        if (limit.Value is { } value)
            writer.WriteNumber("value", Figures.Rounded(value, 4));
        writer.WriteString("unit", limit.Unit);
        writer.WriteString("level", Words<Severity>.Standard.Of(limit.Level));
        writer.WriteString("kind", Words<LimitKind>.Standard.Of(limit.Kind));
        if (limit.Source is { } source)
            WriteSource(writer, source);
        writer.WriteStartObject("setBy");
        writer.WriteString("ruleBook", limit.SetBy.Id);
        writer.WriteNumber("version", limit.SetBy.Version);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteSource(Utf8JsonWriter writer, PublishedSource source)
    {
        writer.WriteStartObject("source");
        writer.WriteString("row", source.Row);
        writer.WriteString("title", source.Title);
        writer.WriteString("publisher", source.Publisher);
        if (source.Year is { } year)
            writer.WriteNumber("year", year);
        writer.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter writer, Place place)
    {
        writer.WriteStartObject();
        if (place.Mark is { } mark)
            writer.WriteNumber("mark", mark);
        writer.WriteString("at", Words<PlaceKind>.Standard.Of(place.At));
        if (place.BoxMm is { } box)
            writer.Box("boxMm", box);
        if (place.At == PlaceKind.CapFront)
        {
            WriteNumbers(writer, "elements", place.Elements);
            WriteNumbers(writer, "blocks", place.Blocks);
        }

        if (place.Stitches is { } stitches)
        {
            writer.WriteStartObject("stitches");
            writer.WriteNumber("first", stitches.First);
            writer.WriteNumber("last", stitches.Last);
            writer.WriteEndObject();
        }

        if (place.Measured is { } measured)
            writer.Quantity("measured", measured);
        if (place.Record is { } record)
            writer.WriteNumber("record", record);
        if (place.ByteOffset is { } offset)
            writer.WriteNumber("byteOffset", offset);
        writer.Text("pointer", place.Pointer);
        writer.WriteEndObject();
    }

    private static void WriteRemedy(Utf8JsonWriter writer, RuleRemedy remedy)
    {
        writer.WriteStartObject("remedy");
        writer.WriteString("who", Words<Actor>.Standard.Of(remedy.Who));
        writer.WriteString("message", remedy.Message);
        writer.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter writer, string name, IReadOnlyList<int> numbers)
    {
        writer.WriteStartArray(name);
        foreach (var number in numbers)
            writer.WriteNumberValue(number);
        writer.WriteEndArray();
    }
}
