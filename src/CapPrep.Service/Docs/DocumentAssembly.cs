using System.Text.Json.Nodes;
using CapPrep.Service.Docs.Operations;
using CapPrep.Service.Docs.Schemas;

namespace CapPrep.Service.Docs;

/// <summary>A route as it is mapped.</summary>
/// <param name="Method">In lower case.</param>
/// <param name="Path">Beginning with a slash.</param>
/// <param name="Scopes">Scopes of which one is enough; empty: open to everybody.</param>
internal sealed record Route(string Method, string Path, string Name, IReadOnlyList<string> Scopes);

/// <summary>Puts the document together from the routes there are and what is written about them.</summary>
internal static class DocumentAssembly
{
    private const string Scheme = "key";

    private static readonly string[] Methods = ["get", "put", "post", "patch", "delete"];

    /// <summary>The whole document. A route without a row in the table is left out; a test finds it.</summary>
    public static JsonObject Of(IEnumerable<Route> routes)
    {
        var paths = Paths(routes);
        var webhooks = Callbacks.All();
        return new JsonObject
        {
            ["openapi"] = "3.1.1",
            ["info"] = About.Info(),
            ["servers"] = new JsonArray(new JsonObject { ["url"] = "/" }),
            ["components"] = Components(Documented.Named("examples", paths, webhooks)),
            ["paths"] = paths,
            ["webhooks"] = webhooks,
            ["tags"] = About.Tags(),
        };
    }

    private static JsonObject Paths(IEnumerable<Route> routes)
    {
        var paths = new JsonObject();
        foreach (var path in routes.Where(route => AllOperations.Find(route.Name) is not null).GroupBy(route => route.Path).OrderBy(path => path.Key, StringComparer.Ordinal))
            paths[path.Key] = PathItem(path);
        return paths;
    }

    private static JsonObject PathItem(IEnumerable<Route> routes) => new(routes
        .OrderBy(route => Array.IndexOf(Methods, route.Method))
        .Select(route => KeyValuePair.Create(route.Method, (JsonNode?)Described(route))));

    private static JsonObject Described(Route route)
    {
        var operation = AllOperations.Find(route.Name)!;
        var described = new JsonObject
        {
            ["tags"] = new JsonArray(operation.Tag),
            ["summary"] = operation.Summary,
            ["description"] = Description(operation, route),
            ["operationId"] = operation.Id,
        };
        if (operation.Parameters.Count > 0)
            described["parameters"] = new JsonArray([.. operation.Parameters.Select(name => Documented.Ref("parameters", name))]);
        if (operation.Request.Count > 0)
            described["requestBody"] = RequestBody(operation);
        described["responses"] = Responses(operation, route.Scopes.Count > 0, route.Method != "get");
        described["security"] = Security(route.Scopes);
        return described;
    }

    private static string Description(Operation operation, Route route)
    {
        var scopes = route.Scopes.Count == 0
            ? "Needs no key."
            : $"Needs a key with the scope {string.Join(" or ", route.Scopes.Select(scope => $"`{scope}`"))}.";
        return operation.Description is null ? scopes : $"{operation.Description}\n\n{scopes}";
    }

    private static JsonObject RequestBody(Operation operation) => new()
    {
        ["required"] = !operation.RequestMayBeAbsent,
        ["content"] = ContentOf(operation.Request),
    };

    private static JsonObject Responses(Operation operation, bool secured, bool changing)
    {
        var answers = operation.Answers.Select(answer => KeyValuePair.Create(Documented.Status(answer.Status), (JsonNode?)Response(answer, secured)));
        return new JsonObject(answers.Concat(RefusalAnswers.Of(operation, secured, changing)).OrderBy(answer => answer.Key, StringComparer.Ordinal));
    }

    private static JsonObject Response(Answer answer, bool secured)
    {
        var response = new JsonObject { ["description"] = answer.Says };
        string[] headers = [.. answer.Headers, .. secured ? AnswerHeaders.Always : []];
        if (headers.Length > 0)
            response["headers"] = Documented.Refs("headers", headers.Order(StringComparer.Ordinal), Documented.Same);
        if (answer.Contents.Count > 0)
            response["content"] = ContentOf(answer.Contents);
        return response;
    }

    private static JsonObject ContentOf(IEnumerable<Content> contents) => new(contents.Select(content =>
    {
        var media = new JsonObject();
        if (content.Schema is not null)
            media["schema"] = Shape.Ref(content.Schema);
        if (content.Examples.Count > 0)
            media["examples"] = Documented.Refs("examples", content.Examples, Documented.Same);
        if (content.MediaType == Content.Multipart)
            media["encoding"] = Encoding();
        return KeyValuePair.Create(content.MediaType, (JsonNode?)media);
    }));

    private static JsonObject Encoding() => new()
    {
        ["ticket"] = new JsonObject { ["contentType"] = "application/json" },
        ["tape"] = new JsonObject { ["contentType"] = "application/octet-stream" },
    };

    // For a scheme of type http the list names what the key must hold; one of the objects is enough.
    private static JsonArray Security(IReadOnlyList<string> scopes) =>
        new([.. scopes.Select(scope => new JsonObject { [Scheme] = new JsonArray(scope) })]);

    /// <param name="examples">Names of the examples that are referred to.</param>
    private static JsonObject Components(HashSet<string> examples)
    {
        var known = Examples.All();
        var all = known.Concat(RefusalAnswers.Examples(known.Keys))
            .Where(example => examples.Contains(example.Key))
            .Select(example => KeyValuePair.Create(example.Key, new JsonObject { ["value"] = example.Value.DeepClone() }));
        return new JsonObject
        {
            ["schemas"] = Documented.Section(AllSchemas.ByName()),
            ["parameters"] = Documented.Section(Parameters.All()),
            ["examples"] = Documented.Section(all),
            ["headers"] = Documented.Section(AnswerHeaders.All()),
            ["securitySchemes"] = new JsonObject { [Scheme] = About.Key() },
        };
    }
}
