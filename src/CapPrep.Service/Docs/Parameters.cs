using System.Text.Json.Nodes;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Events;
using CapPrep.Service.Storage.Rows;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs;

/// <summary>Parameters by the name under which operations share them.</summary>
internal static class Parameters
{
    public static IReadOnlyDictionary<string, JsonObject> All() => new SortedDictionary<string, JsonObject>(
        Listed().ToDictionary(pair => pair.Name, pair => pair.Parameter), StringComparer.Ordinal);

    private static IEnumerable<(string Name, JsonObject Parameter)> Listed() =>
    [
        .. InPath(), .. InHeader(), .. Paging(), .. OfJobs(), .. OfDocuments(), .. OfTheCatalog(),
    ];

    private static IEnumerable<(string, JsonObject)> InPath() =>
    [
        ("jobId", Path("id", Ref("JobId"))),
        ("catalogId", Path("id", Ref("CatalogId"))),
        ("endpointId", Path("id", Ref("EndpointId"))),
        ("deliveryId", Path("delivery", Ref("DeliveryId"))),
        ("keyId", Path("id", Ref("KeyId"))),
        ("problemCode", Path("code", Pattern(60, "^[a-z0-9-]+$"))),
    ];

    private static IEnumerable<(string, JsonObject)> InHeader() =>
    [
        ("idempotencyKey", Header("Idempotency-Key", Pattern(257, "^[\\x21-\\x7E]{1,257}$"),
            "Makes repeating safe for 7 days: the same key with the same content (tape and ticket, or decision) gives the same answer, with other content 422. 1 to 255 visible ASCII characters, in quotes or not.")),
        ("prefer", Header("Prefer", Pattern(200, "^[\\x20-\\x7E]*$"),
            "wait=N waits up to N seconds (20 at most unless the operator says otherwise) for the end of the job, or for an event (RFC 7240).")),
        ("contentDigest", Header("Content-Digest", Pattern(200, "^[\\x20-\\x7E]*$"), "sha-256=:…: of the body (RFC 9530); compared when sent.")),
        ("ifMatch", Header("If-Match", Pattern(200, "^(\\*|(W/)?\"[0-9]+\"(, *(W/)?\"[0-9]+\")*)$"), "The version that is changed, in quotes, as the ETag gave it.")),
        ("createOnly", Header("If-None-Match", Const("*"), "A star creates: there must be nothing of this id yet.")),
        ("ifNoneMatch", Header("If-None-Match", Pattern(400, "^[\\x20-\\x7E]*$"), "The ETag you have; answers 304 when it is still the same.")),
    ];

    private static IEnumerable<(string, JsonObject)> Paging() =>
    [
        ("limit", Query("limit", Integer(1, int.MaxValue), "Items on a page; 50 unless given, more than 200 is cut to 200.")),
        ("cursor", Query("cursor", Pattern(400, "^[A-Za-z0-9_-]+$"), "As the page before gave it; belongs to its filters.")),
        ("after", Query("after", Pattern(36, "^(now|evt_[0-9a-f]{32})$"), "The event behind which to begin; now begins behind the newest. Without it: the oldest kept.")),
        ("eventType", Query("type", List(Word(EventTypes.All), EventTypes.All.Count), "May repeat.")),
    ];

    private static IEnumerable<(string, JsonObject)> OfJobs() =>
    [
        ("orderNumber", Query("orderNumber", Text(64))),
        ("line", Query("line", Text(32))),
        ("customer", Query("customer", Ref("CatalogId"))),
        ("capStyle", Query("capStyle", Ref("CatalogId"))),
        ("digitizer", Query("digitizer", Text(60))),
        ("status", Query("status", List(Word<JobStatus>(), 4), "May repeat.")),
        ("verdict", Query("verdict", List(Word<Verdict>(), 4), "May repeat.")),
        ("door", Query("door", Word<Door>())),
        ("latest", Query("latest", Flag(), "true: only the last revision of each order, line and location.")),
        ("receivedFrom", Query("receivedFrom", Ref("Time"), "Included.")),
        ("receivedTo", Query("receivedTo", Ref("Time"), "Not included.")),
        ("sort", Query("sort", Word("received", "changed"),
            "received: newest first. changed: oldest change first; the last page has a cursor too: keep it, ask again with it, and no change is ever missed.")),
    ];

    private static IEnumerable<(string, JsonObject)> OfDocuments() =>
    [
        ("format", Query("format", Word("pdf", "png", "svg"), "Goes before the header Accept.")),
        ("tapeVersion", Query("version", Word("sew", "received", "proposed"), "sew unless given.")),
    ];

    private static IEnumerable<(string, JsonObject)> OfTheCatalog() =>
    [
        ("version", Query("version", Integer(1, int.MaxValue), "The newest unless given.")),
        ("effective", Query("effective", Flag(), "true: the built-in rows with this book laid over them, for the customer, style and location given.")),
        ("location", Query("location", Word<CapLocation>(), "front unless given.")),
        ("deliveryState", Query("state", Word<DeliveryState>())),
    ];

    private static JsonObject Path(string name, JsonObject schema) => new()
    {
        ["name"] = name,
        ["in"] = "path",
        ["required"] = true,
        ["schema"] = schema,
    };

    private static JsonObject Query(string name, JsonObject schema, string? says = null) => Optional(name, "query", schema, says);

    private static JsonObject Header(string name, JsonObject schema, string says) => Optional(name, "header", schema, says);

    private static JsonObject Optional(string name, string place, JsonObject schema, string? says)
    {
        var parameter = new JsonObject { ["name"] = name, ["in"] = place };
        if (says is not null)
            parameter["description"] = says;
        parameter["schema"] = schema;
        return parameter;
    }
}
