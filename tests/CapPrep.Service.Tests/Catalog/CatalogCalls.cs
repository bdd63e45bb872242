using System.Text;
using System.Text.Json.Nodes;

namespace CapPrep.Service.Tests.Catalog;

/// <summary>Calls of the catalog with their preconditions.</summary>
internal static class CatalogCalls
{
    private static readonly string[] Added = ["version", "by", "at", "retired", "builtIn"];

    public static Task<Answer> Get(this HttpClient client, string path, string? ifNoneMatch = null) =>
        client.Call(HttpMethod.Get, path, null, ("If-None-Match", ifNoneMatch));

    public static Task<Answer> Create(this HttpClient client, string path, string body) =>
        client.Call(HttpMethod.Put, path, body, ("If-None-Match", "*"));

    public static Task<Answer> Change(this HttpClient client, string path, string body, string tag) =>
        client.Call(HttpMethod.Put, path, body, ("If-Match", tag));

    public static Task<Answer> Retire(this HttpClient client, string path, string? tag) =>
        client.Call(HttpMethod.Delete, path, null, ("If-Match", tag));

    public static async Task<Answer> Call(this HttpClient client, HttpMethod method, string path, string? body, params (string Name, string? Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path);
        if (body is not null)
            request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        foreach (var (name, value) in headers.Where(header => header.Value is not null))
            request.Headers.TryAddWithoutValidation(name, value);
        using var response = await client.SendAsync(request);
        return await Answer.Of(response);
    }

    /// <summary>The body that a PUT of what was given would have, with changes.</summary>
    public static async Task<string> BodyOf(this HttpClient client, string path, params (string Name, JsonNode? Value)[] changes)
    {
        var body = JsonNode.Parse((await client.Get(path)).Body.GetRawText())!.AsObject();
        foreach (var name in Added)
            body.Remove(name);
        foreach (var (name, value) in changes)
            body[name] = value;
        return body.ToJsonString();
    }
}
