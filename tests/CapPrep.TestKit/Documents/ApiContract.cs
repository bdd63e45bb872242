using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace CapPrep.TestKit.Documents;

/// <summary>
/// The API document as a test uses it: looks operations up and holds bodies against their schemas. Answers may gain
/// members for callers, but not unnoticed by us: here a member that no schema lists is a fault.
/// </summary>
public sealed class ApiContract
{
    private const string Components = "#/components/schemas/";
    private const string Definitions = "#/$defs/";

    private readonly JsonObject _definitions;
    private readonly ConcurrentDictionary<string, JsonSchema> _schemas = new();

    public ApiContract(ReadOnlySpan<byte> document)
    {
        Document = JsonNode.Parse(document)!.AsObject();
        _definitions = JsonNode.Parse(Document["components"]!["schemas"]!.ToJsonString().Replace(Components, Definitions, StringComparison.Ordinal))!.AsObject();
        foreach (var schema in Nodes(_definitions).OfType<JsonObject>().Where(IsOpen).ToArray())
            schema["additionalProperties"] = false;
    }

    public JsonObject Document { get; }

    /// <summary>Every operation of the section <c>paths</c>.</summary>
    public IReadOnlyList<ApiOperation> Operations => [.. Document["paths"]!.AsObject().SelectMany(path =>
        path.Value!.AsObject().Select(method => new ApiOperation(method.Key, path.Key, method.Value!.AsObject())))];

    public ApiOperation Operation(string id) => Operations.Single(operation => operation.Id == id);

    /// <summary>What is wrong with a body where the document lists this schema; empty: nothing.</summary>
    /// <param name="schema">As it stands in the document, usually a reference.</param>
    public IReadOnlyList<string> Faults(JsonNode schema, JsonNode? body)
    {
        var result = _schemas.GetOrAdd(schema.ToJsonString(), Parsed).Evaluate(body, new EvaluationOptions
        {
            OutputFormat = OutputFormat.List,
            RequireFormatValidation = true,
        });
        return result.IsValid ? [] : [.. result.Details
            .Where(detail => detail is { IsValid: false, HasErrors: true })
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Key}: {error.Value}"))];
    }

    /// <summary>The value behind a reference of the document, or the node itself.</summary>
    public JsonNode Resolved(JsonNode node)
    {
        while (node is JsonObject value && value["$ref"]?.GetValue<string>() is { } reference)
            node = reference[2..].Split('/').Aggregate((JsonNode)Document, (at, name) => at[name]!);
        return node;
    }

    /// <summary>A node and everything under it.</summary>
    public static IEnumerable<JsonNode> Nodes(JsonNode node)
    {
        yield return node;
        var children = node switch
        {
            JsonObject value => value.Select(member => member.Value),
            JsonArray items => items,
            _ => [],
        };
        foreach (var below in children.OfType<JsonNode>().SelectMany(Nodes))
            yield return below;
    }

    private JsonSchema Parsed(string schema)
    {
        var root = JsonNode.Parse(schema.Replace(Components, Definitions, StringComparison.Ordinal))!.AsObject();
        root["$defs"] = _definitions.DeepClone();
        return JsonSchema.FromText(root.ToJsonString());
    }

    private static bool IsOpen(JsonObject schema) =>
        schema["type"] is JsonValue type && type.GetValueKind() == JsonValueKind.String && type.GetValue<string>() == "object"
        && schema["properties"] is JsonObject && schema["additionalProperties"] is null;
}

/// <summary>One operation of the document.</summary>
public sealed record ApiOperation(string Method, string Path, JsonObject Body)
{
    public string Id => Body["operationId"]!.GetValue<string>();

    public JsonObject Responses => Body["responses"]!.AsObject();

    public bool IsSecured => Body["security"] is JsonArray { Count: > 0 };

    public override string ToString() => $"{Method.ToUpperInvariant()} {Path}";
}
