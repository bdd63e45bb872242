using System.Text.Json.Nodes;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Storage.Rows;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What happened: the body of a webhook, and the same bytes in the feed.</summary>
internal static class EventSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Event", new JsonObject { ["oneOf"] = new JsonArray([.. Types.Select(type => (JsonNode)Ref(type.Schema))]) }),
        .. Types.Select(type => new KeyValuePair<string, JsonObject>(type.Schema, Envelope(type.Name, type.Data))),
        new("TestEvent", Open(Req("id", Ref("EventId")), Req("type", Const("webhook.test")), Req("timestamp", Ref("Time")), Req("shop", Ref("CatalogId")), Req("data", Open(Req("endpoint", Ref("EndpointId")))))),
        new("Order", Order()),
        new("OrderJob", Open(Req("id", Ref("JobId")), Req("number", Integer(1, long.MaxValue / 1024)), Req("line", Text(32)), Req("location", Word<CapLocation>()), Req("status", Word<JobStatus>()), Opt("verdict", Word<Verdict>()))),
        new("DropItem", Drop()),
        new("EndpointWarning", Open(Req("endpoint", Ref("EndpointId")), Req("url", Url(LongText), "Scheme, host and port only."), Opt("note", Text(200)), Req("state", Word<EndpointState>()), Req("reason", Word("failing", "gone")), Opt("failingSince", Ref("Time")), Opt("switchOffAt", Ref("Time")), Opt("spentPercent", Integer(50, 100), "Of the time until it is switched off."))),
    ];

    /// <summary>The types that are counted and stand in the feed.</summary>
    public static IReadOnlyList<(string Name, string Schema, string Data)> Types { get; } =
    [
        ("job.finished", "JobFinishedEvent", "JobOfEvent"),
        ("job.failed", "JobFailedEvent", "JobOfEvent"),
        ("job.decided", "JobDecidedEvent", "DecidedJob"),
        ("order.finished", "OrderFinishedEvent", "Order"),
        ("drop.returned", "DropReturnedEvent", "DropItem"),
        ("endpoint.warning", "EndpointWarningEvent", "EndpointWarning"),
    ];

    private static JsonObject Envelope(string type, string data) => Open(
        Req("id", Ref("EventId"), "The same in every attempt, every resend and the feed."),
        Req("type", Const(type)),
        Req("timestamp", Ref("Time"), "When it happened."),
        Req("shop", Ref("CatalogId")),
        Req("sequence", Integer(1, long.MaxValue / 1024), "Counts this type in this shop, without gaps."),
        Opt("previousId", Ref("EventId"), "The event of this type before it; absent in the first."),
        Req("data", Ref(data)));

    private static JsonObject Order() => Open(
        Req("orderNumber", Text(64)),
        Opt("customer", Ref("CatalogId")),
        Opt("orderLines", Integer(1, 1000)),
        Opt("revision", Integer(1, int.MaxValue), "Rises when a line of a finished order is replaced and ends again."),
        Req("status", Word("open", "finished")),
        Opt("verdict", Word<Verdict>(), "The worst of its jobs."),
        Req("counts", Open(Req("sewAsReceived", Count()), Req("sewResequenced", Count()), Req("returnToDigitizer", Count()), Req("returnToOrderDesk", Count()), Req("failed", Count()), Req("open", Count()))),
        Req("jobs", List(Ref("OrderJob"), 1000)),
        Req("links", Open(Req("order", Url(LongText)))));

    private static JsonObject Drop() => Open(
        Req("id", Ref("DropId")),
        Req("folder", Text(60)),
        Req("name", Text(255)),
        Req("state", Word<DropState>()),
        Req("files", List(Open(Req("name", Text(255)), Req("bytes", Integer(0, long.MaxValue / 1024))), 4)),
        Req("seen", Ref("Time")),
        Opt("returned", Ref("Time")),
        Opt("folderPath", Text(LongText)),
        Opt("orderNumber", Text(64)),
        Opt("job", Ref("JobId")),
        Opt("problem", Ref("Problem")));
}
