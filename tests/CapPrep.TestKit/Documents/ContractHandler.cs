using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace CapPrep.TestKit.Documents;

/// <summary>
/// Holds every answer that a test gets against the API document: its status, its content type and its body. So what
/// the service says and what the document promises cannot drift apart unnoticed.
/// </summary>
public sealed class ContractHandler(HttpMessageHandler inner) : DelegatingHandler(inner)
{
    private static readonly Lazy<(ApiOperation Operation, Regex Path)[]> Operations = new(() =>
        [.. Composition.Contract.Operations.Select(operation => (operation, PathOf(operation)))]);

    private static readonly ConcurrentDictionary<string, byte> Seen = new();

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var response = await base.SendAsync(request, cancellationToken);
        if (Find(request) is not { } operation)
            return response;
        await response.Content.LoadIntoBufferAsync(cancellationToken);
        var body = await response.Content.ReadAsByteArrayAsync(cancellationToken);
        var faults = Faults(operation, (int)response.StatusCode, response.Content.Headers.ContentType?.MediaType, body);
        if (faults.Count > 0)
            throw new InvalidOperationException($"{operation} answered {(int)response.StatusCode} otherwise than documented: {string.Join("; ", faults)}");
        return response;
    }

    private static IReadOnlyList<string> Faults(ApiOperation operation, int status, string? mediaType, byte[] body)
    {
        var answer = operation.Responses[status.ToString(System.Globalization.CultureInfo.InvariantCulture)];
        if (answer is null)
            return ["this status is not documented."];
        if (body.Length == 0)
            return [];
        if (answer["content"]?[mediaType ?? ""] is not { } media)
            return [$"the content type {mediaType} is not documented."];
        if (media["schema"] is not { } schema)
            return [];
        // Lists and jobs repeat a lot; the same bytes need no second look.
        var print = $"{operation.Id} {status} {Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(body))}";
        return Seen.TryAdd(print, 0) ? Composition.Contract.Faults(schema, JsonNode.Parse(body)) : [];
    }

    private static ApiOperation? Find(HttpRequestMessage request) => Operations.Value
        .FirstOrDefault(entry => entry.Operation.Method.Equals(request.Method.Method, StringComparison.OrdinalIgnoreCase)
            && entry.Path.IsMatch(request.RequestUri!.AbsolutePath)).Operation;

    private static Regex PathOf(ApiOperation operation) =>
        new("^" + Regex.Replace(operation.Path, @"\{\w+\}", "[^/]+") + "$", RegexOptions.CultureInvariant);
}
