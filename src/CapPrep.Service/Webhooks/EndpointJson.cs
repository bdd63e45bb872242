using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>Writes endpoints as JSON.</summary>
internal sealed class EndpointJson(Secrets secrets, Settings settings, TimeProvider clock)
{
    /// <param name="secret">A secret made just now; it is shown this once. Null: none.</param>
    public byte[] One(EndpointRow row, string? secret = null) => Json.Bytes(writer => Write(writer, row, secret));

    public byte[] List(IEnumerable<EndpointRow> rows) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteStartArray("items");
        foreach (var row in rows)
            Write(writer, row, null);
        writer.WriteEndArray();
        writer.WriteBoolean("more", false);
        writer.WriteEndObject();
    });

    /// <summary>
    /// The data of a warning: what others may know of the endpoint. Of its address only the host, since the rest may hold a token.
    /// </summary>
    /// <param name="reason"><c>failing</c> or <c>gone</c>.</param>
    /// <param name="spent">Per cent of the time until it is switched off; null: not a matter of time.</param>
    public static byte[] Warning(EndpointRow row, string reason, EndpointState state, int? spent, int switchOffAfterHours) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("endpoint", row.Id);
        writer.WriteString("url", new Uri(row.Url).GetLeftPart(UriPartial.Authority) + "/");
        if (row.Note is not null)
            writer.WriteString("note", row.Note);
        writer.WriteString("state", Words<EndpointState>.Standard.Of(state));
        writer.WriteString("reason", reason);
        WriteFailing(writer, row, switchOffAfterHours);
        if (spent is not null)
            writer.WriteNumber("spentPercent", spent.Value);
        writer.WriteEndObject();
    });

    private void Write(Utf8JsonWriter writer, EndpointRow row, string? secret)
    {
        writer.WriteStartObject();
        writer.WriteString("id", row.Id);
        writer.WriteString("url", row.Url);
        writer.WriteWords("types", EndpointTypes.Of(row));
        if (row.Note is not null)
            writer.WriteString("note", row.Note);
        writer.WriteString("state", Words<EndpointState>.Standard.Of(row.State));
        WriteFailing(writer, row, settings.Webhooks.SwitchOffAfterHours);
        WriteSecrets(writer, row);
        if (secret is not null)
            writer.WriteString("secret", secret);
        writer.WriteString("created", Json.Time(row.Created));
        writer.WriteEndObject();
    }

    private static void WriteFailing(Utf8JsonWriter writer, EndpointRow row, int switchOffAfterHours)
    {
        if (row.FailingSince is not { } since)
            return;
        writer.WriteString("failingSince", Json.Time(since));
        writer.WriteString("switchOffAt", Json.Time(since.AddHours(switchOffAfterHours)));
    }

    private void WriteSecrets(Utf8JsonWriter writer, EndpointRow row)
    {
        writer.WriteStartArray("secrets");
        foreach (var secret in secrets.Unseal(row.Secrets).Live(clock.GetUtcNow()))
        {
            writer.WriteStartObject();
            writer.WriteString("hint", secret.Hint);
            writer.WriteString("created", Json.Time(secret.Created));
            if (secret.Ends is { } ends)
                writer.WriteString("ends", Json.Time(ends));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
