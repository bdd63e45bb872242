using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;

namespace CapPrep.Service.Tests;

/// <summary>An answer, read whole.</summary>
internal sealed record Answer(HttpStatusCode Status, JsonElement Body, HttpResponseHeaders Headers, string? ContentType)
{
    /// <summary>Code of the problem; null: none.</summary>
    public string? Code => Body.ValueKind == JsonValueKind.Object && Body.TryGetProperty("code", out var code) ? code.GetString() : null;

    /// <summary>Every violation as <c>place code</c>, in its order; the place is the pointer, or the byte.</summary>
    public IReadOnlyList<string> Faults => Body.TryGetProperty("violations", out var violations)
        ? [.. violations.EnumerateArray().Select(fault => $"{Place(fault)} {fault.GetProperty("code").GetString()}")]
        : [];

    public JsonElement this[string member] => Body.GetProperty(member);

    public static async Task<Answer> Of(HttpResponseMessage response)
    {
        var bytes = await response.Content.ReadAsByteArrayAsync();
        var body = bytes.Length == 0 ? default : JsonDocument.Parse(bytes).RootElement;
        return new Answer(response.StatusCode, body, response.Headers, response.Content.Headers.ContentType?.MediaType);
    }

    public string? Header(string name) => Headers.TryGetValues(name, out var values) ? string.Join(", ", values) : null;

    private static string Place(JsonElement fault) => fault.TryGetProperty("pointer", out var pointer) ? pointer.GetString()!
        : fault.TryGetProperty("byteOffset", out var offset) ? $"byte {offset.GetInt64()}"
        : fault.GetProperty("part").GetString()!;
}
