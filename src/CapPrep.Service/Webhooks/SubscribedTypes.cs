using System.Text.Json;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>The event types an endpoint can subscribe to.</summary>
internal static class SubscribedTypes
{
    /// <summary>Sorted.</summary>
    public static readonly IReadOnlyList<string> All =
        ["drop.returned", "endpoint.warning", "job.failed", "job.finished", "order.finished"];

    /// <summary>Sent when a person asks for it; nobody subscribes to it.</summary>
    public const string Test = "webhook.test";

    public static string[] Of(EndpointRow row) => row.Types.Split(',');

    public static void WriteWords(this Utf8JsonWriter writer, string name, IEnumerable<string> words)
    {
        writer.WriteStartArray(name);
        foreach (var word in words)
            writer.WriteStringValue(word);
        writer.WriteEndArray();
    }
}
