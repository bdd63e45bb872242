using System.Text.Json.Nodes;
using CapPrep.Service.Docs.Schemas;

namespace CapPrep.Service.Docs;

/// <summary>The webhooks section: what receivers get.</summary>
internal static class Callbacks
{
    private const string Says =
        "Signed as Standard Webhooks describes: `webhook-id` (the same at every attempt), `webhook-timestamp`, "
        + "`webhook-signature` (`v1,` and the base64 HMAC-SHA-256 of id.timestamp.body, one for each live secret, blank between). "
        + "Answer 2xx within 20 seconds; anything else is tried again for at least 96 hours. 410 switches the endpoint off.";

    private static readonly (string Type, string Schema, string Example, string Summary)[] Sent =
    [
        ("job.finished", "JobFinishedEvent", "event-job-finished", "A job has its verdict."),
        ("job.failed", "JobFailedEvent", "event-job-failed", "A job failed by our fault."),
        ("job.decided", "JobDecidedEvent", "event-job-decided", "A person accepted or rejected findings, or approved a sewn sample."),
        ("order.finished", "OrderFinishedEvent", "event-order-finished", "Every line of an order has ended; sent again when one is replaced."),
        ("drop.returned", "DropReturnedEvent", "event-drop-returned", "Files from a hot folder were returned."),
        ("endpoint.warning", "EndpointWarningEvent", "event-endpoint-warning", "Another endpoint fails and will be switched off."),
        ("webhook.test", "TestEvent", "event-webhook-test", "Somebody asked for a test."),
    ];

    public static JsonObject All() => new(Sent
        .OrderBy(sent => sent.Type, StringComparer.Ordinal)
        .Select(sent => KeyValuePair.Create(sent.Type, (JsonNode?)new JsonObject
        {
            ["post"] = Post(sent.Type, sent.Schema, sent.Example, sent.Summary),
        })));

    private static JsonObject Post(string type, string schema, string example, string summary) => new()
    {
        ["tags"] = new JsonArray("Webhooks"),
        ["summary"] = summary,
        ["description"] = Says,
        ["operationId"] = "on" + string.Concat(type.Split('.').Select(word => char.ToUpperInvariant(word[0]) + word[1..])),
        ["requestBody"] = new JsonObject
        {
            ["required"] = true,
            ["content"] = new JsonObject
            {
                ["application/json"] = new JsonObject
                {
                    ["schema"] = Shape.Ref(schema),
                    ["examples"] = Documented.Refs("examples", [example], Documented.Same),
                },
            },
        },
        ["responses"] = new JsonObject
        {
            ["2XX"] = new JsonObject { ["description"] = "Taken." },
            ["410"] = new JsonObject { ["description"] = "Nobody is here any more: the endpoint is switched off." },
        },
        ["security"] = new JsonArray(),
    };
}
