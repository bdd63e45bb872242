using System.Text.Json;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>The event types of an endpoint, in its row and in JSON.</summary>
internal static class EndpointTypes
{
    public static string[] Of(EndpointRow row) => row.Types.Split(',');

    public static void WriteWords(this Utf8JsonWriter writer, string name, IEnumerable<string> words)
    {
        writer.WriteStartArray(name);
        foreach (var word in words)
            writer.WriteStringValue(word);
        writer.WriteEndArray();
    }
}
