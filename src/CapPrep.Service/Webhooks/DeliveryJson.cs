using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>Writes deliveries as JSON.</summary>
internal static class DeliveryJson
{
    public static byte[] One(DeliveryRow row, IEnumerable<AttemptRow> attempts) =>
        Json.Bytes(writer => Write(writer, row, attempts, withExcerpts: true));

    /// <param name="attempts">Of all rows; the excerpts of answers are left out.</param>
    /// <param name="cursor">What to ask the next page with; null: this was the last.</param>
    public static byte[] Page(IEnumerable<DeliveryRow> rows, ILookup<string, AttemptRow> attempts, string? cursor) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteStartArray("items");
        foreach (var row in rows)
            Write(writer, row, attempts[row.Id], withExcerpts: false);
        writer.WriteEndArray();
        if (cursor is not null)
            writer.WriteString("cursor", cursor);
        writer.WriteBoolean("more", cursor is not null);
        writer.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter writer, DeliveryRow row, IEnumerable<AttemptRow> attempts, bool withExcerpts)
    {
        writer.WriteStartObject();
        writer.WriteString("id", row.Id);
        writer.WriteString("event", row.Event);
        writer.WriteString("endpoint", row.Target);
        writer.WriteString("state", Words<DeliveryState>.Standard.Of(row.State));
        writer.WriteStartArray("attempts");
        foreach (var attempt in attempts)
            Write(writer, attempt, withExcerpts);
        writer.WriteEndArray();
        if (row.NextAt is { } next)
            writer.WriteString("next", Json.Time(next));
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, AttemptRow row, bool withExcerpt)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number", row.Number);
        writer.WriteString("at", Json.Time(row.At));
        if (row.Address is not null)
            writer.WriteString("address", row.Address);
        if (row.Tls is not null)
            writer.WriteString("tls", row.Tls);
        writer.WritePropertyName("ms");
        writer.WriteRawValue(row.Phases);
        if (row.Status is { } status)
            writer.WriteNumber("status", status);
        writer.WriteString("outcome", row.Outcome);
        if (withExcerpt && row.Excerpt is not null)
            writer.WriteString("excerpt", row.Excerpt);
        writer.WriteEndObject();
    }
}
