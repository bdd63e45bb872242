using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Access;

/// <summary>Writes keys as JSON, without their secret part.</summary>
internal static class KeyJson
{
    /// <param name="key">The key itself, made just now and shown this once; null: none.</param>
    public static byte[] One(KeyRow row, string? key = null) => Json.Bytes(writer => Write(writer, row, key));

    public static byte[] List(IEnumerable<KeyRow> rows) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteStartArray("items");
        foreach (var row in rows)
            Write(writer, row, null);
        writer.WriteEndArray();
        writer.WriteBoolean("more", false);
        writer.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter writer, KeyRow row, string? key)
    {
        writer.WriteStartObject();
        writer.WriteString("id", row.Id);
        writer.WriteString("name", row.Name);
        writer.WriteString("shop", row.Shop);
        writer.WriteStartArray("scopes");
        foreach (var scope in row.Scopes.Split(','))
            writer.WriteStringValue(scope);
        writer.WriteEndArray();
        writer.WriteString("start", row.Start);
        if (key is not null)
            writer.WriteString("key", key);
        writer.WriteString("created", Json.Time(row.Created));
        if (row.Expires is { } expires)
            writer.WriteString("expires", Json.Time(expires));
        if (row.LastUsed is { } used)
            writer.WriteString("lastUsed", Json.Time(used));
        writer.WriteEndObject();
    }
}
