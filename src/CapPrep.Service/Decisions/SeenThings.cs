using System.Text.Json;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Decisions;

/// <summary>
/// Writes what a person had before them when they decided, so that a later check can tell whether it is still the same.
/// </summary>
internal static class SeenThings
{
    /// <summary>A finding: its limit, its worst figure, its sentence, and where the element lies in the tape.</summary>
    public static byte[] Point(StoredFinding finding, (int First, int Last)? element) => Json.Bytes(writer =>
    {
        var limit = finding.Member("limit");
        writer.WriteStartObject();
        writer.WriteString("severity", finding.Severity);
        Copy(writer, limit, "is");
        Copy(writer, limit, "value");
        Copy(writer, limit, "unit");
        if (finding.Member("measured") is { ValueKind: JsonValueKind.Object } measured)
            writer.WriteNumber("measured", measured.GetProperty("value").GetDouble());
        writer.WriteString("message", finding.Message);
        if (element is { } stitches)
        {
            writer.WriteNumber("first", stitches.First);
            writer.WriteNumber("last", stitches.Last);
        }

        writer.WriteEndObject();
    });

    /// <summary>A sample sewn in another order than the received one: which order, and which block sews when.</summary>
    public static byte[] Sample(StoredResult result) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteBoolean("turned", result.IsSewnTurned);
        writer.WriteStartObject("start");
        writer.WriteNumber("x", result.SewnStart.X);
        writer.WriteNumber("y", result.SewnStart.Y);
        writer.WriteEndObject();
        Write(writer, "order", result.ProposedOrder);
        Write(writer, "blocks", result.SewnBlocks);
        writer.WriteEndObject();
    });

    private static void Copy(Utf8JsonWriter writer, JsonElement owner, string name)
    {
        if (!owner.TryGetProperty(name, out var value))
            return;
        writer.WritePropertyName(name);
        value.WriteTo(writer);
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<int> numbers)
    {
        writer.WriteStartArray(name);
        foreach (var number in numbers)
            writer.WriteNumberValue(number);
        writer.WriteEndArray();
    }
}
