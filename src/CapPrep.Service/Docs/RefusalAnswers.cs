using System.Text.Json.Nodes;
using CapPrep.Service.Plumbing;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs;

/// <summary>Problems as answers: one answer a status, with an example for every code that can come there.</summary>
internal static class RefusalAnswers
{
    private static readonly Problem[] BehindAKey =
    [
        Problems.KeyInUrl, Problems.KeyMissing, Problems.KeyInvalid, Problems.KeyExpired, Problems.ScopeMissing,
        Problems.RateLimited, Problems.WrongKeys, Problems.OurFault, Problems.DatabaseAway,
    ];

    private static readonly Problem[] Open = [Problems.OurFault];

    private static readonly Problem[] Changing = [Problems.StorageFull];

    /// <summary>The answers of one operation by status.</summary>
    public static IEnumerable<KeyValuePair<string, JsonNode?>> Of(Operation operation, bool secured, bool changing) =>
        (secured ? BehindAKey : Open)
            .Concat(changing ? Changing : [])
            .Concat(operation.Refusals)
            .Distinct()
            .GroupBy(problem => problem.Status)
            .OrderBy(group => group.Key)
            .Select(group => KeyValuePair.Create(Documented.Status(group.Key), (JsonNode?)Of([.. group], secured)));

    /// <summary>An example of every problem by the name of its example.</summary>
    public static IEnumerable<KeyValuePair<string, JsonNode>> Examples(IEnumerable<string> present) => Problems.All
        .Where(problem => !present.Contains(ExampleName(problem)))
        .Select(problem => KeyValuePair.Create<string, JsonNode>(ExampleName(problem), Example(problem)));

    public static string ExampleName(Problem problem) => "problem-" + problem.Code;

    private static JsonObject Of(Problem[] problems, bool secured)
    {
        var codes = problems.OrderBy(problem => problem.Code, StringComparer.Ordinal).ToArray();
        return new JsonObject
        {
            ["description"] = string.Join("\n", codes.Select(problem => $"- `{problem.Code}`: {problem.Title}")),
            ["headers"] = Documented.Refs("headers", Headers(problems[0].Status, secured), Documented.Same),
            ["content"] = new JsonObject
            {
                ["application/problem+json"] = new JsonObject
                {
                    ["schema"] = Ref("Problem"),
                    ["examples"] = Documented.Refs("examples", codes.Select(ExampleName), name => name["problem-".Length..]),
                },
            },
        };
    }

    private static IEnumerable<string> Headers(int status, bool secured) => status switch
    {
        StatusCodes.Status401Unauthorized => ["WWW-Authenticate"],
        StatusCodes.Status429TooManyRequests => [.. AnswerHeaders.Always, "Retry-After"],
        StatusCodes.Status409Conflict => [.. AnswerHeaders.Always, "Retry-After"],
        StatusCodes.Status503ServiceUnavailable => ["Retry-After"],
        _ => secured ? AnswerHeaders.Always : [],
    };

    private static JsonObject Example(Problem problem)
    {
        var body = JsonNode.Parse(new Refusal(problem, problem.Help).Body(traceId: "4bf92f3577b34da6a3ce929d0e0e4736"))!.AsObject();
        body.Remove("detail");
        return body;
    }
}
