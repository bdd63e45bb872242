using System.Text.Json.Nodes;
using CapPrep.Service.Access;
using CapPrep.Service.Storage.Rows;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Webhook endpoints, their deliveries, and keys.</summary>
internal static class AccessSchemas
{
    private const int LongUrl = 2048;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("EndpointRequest", Closed(Req("url", EndpointUrl()), Req("types", EventTypes()), Opt("note", Text(200)))),
        new("EndpointPatch", Closed(Opt("url", EndpointUrl()), Opt("types", EventTypes()), Opt("note", NoteOrNull()), Opt("state", Word("on", "off"))).Says("JSON merge patch (RFC 7396).")),
        new("SecretRequest", Closed(Opt("overlapHours", Integer(0, 168), "How long the old secret signs too; 24 unless given."))),
        new("WebhookEndpoint", Open(Endpoint())),
        new("NewWebhookEndpoint", Open([.. Endpoint(), Req("secret", Secret(), "Shown this once.")])),
        new("Delivery", Delivery()),
        new("Attempt", Attempt()),
        new("KeyRequest", Closed(Req("name", Text(60)), Req("scopes", List(Word(Scopes.All), 6, 1)), Opt("shop", Ref("CatalogId"), "Another shop than the own needs the scope operate."), Opt("expires", Ref("Time")))),
        new("Key", Open(Key())),
        new("NewKey", Open([.. Key(), Req("key", Pattern(80, "^cpk_[a-z0-9]{8}_[A-Za-z0-9_-]+$"), "Shown this once.")])),
    ];

    private static Member[] Endpoint() =>
    [
        Req("id", Ref("EndpointId")),
        Req("url", Url(LongUrl)),
        Req("types", EventTypes()),
        Opt("note", Text(200)),
        Req("state", Word<EndpointState>(), "paused: by the service, which tries again; off: by a person; switchedOff: failing for too long, or gone."),
        Opt("failingSince", Ref("Time")),
        Opt("switchOffAt", Ref("Time")),
        Req("secrets", List(Open(Req("hint", Text(40)), Req("created", Ref("Time")), Opt("ends", Ref("Time"))), 10)),
        Req("created", Ref("Time")),
    ];

    private static JsonObject Delivery() => Open(
        Req("id", Ref("DeliveryId")),
        Req("event", Ref("EventId")),
        Req("endpoint", Ref("EndpointId")),
        Req("state", Word<DeliveryState>()),
        Req("attempts", List(Ref("Attempt"), 1000)),
        Opt("next", Ref("Time"), "When it is tried next."));

    private static JsonObject Attempt() => Open(
        Req("number", Integer(1, 1000)),
        Req("at", Ref("Time")),
        Opt("address", Text(80), "The address that was connected to."),
        Opt("tls", Text(20)),
        Req("ms", Open(Opt("dns", Count()), Opt("connect", Count()), Opt("tls", Count()), Opt("firstByte", Count()), Opt("total", Count()))),
        Opt("status", Integer(100, 999)),
        Req("outcome", Word("delivered", "refused", "redirect", "timeout", "unreachable", "addressNotAllowed", "tls", "tooLong")),
        Opt("excerpt", AnyText(2048), "The beginning of the receiver's answer."));

    private static Member[] Key() =>
    [
        Req("id", Ref("KeyId")),
        Req("name", Text(60)),
        Req("shop", Ref("CatalogId")),
        Req("scopes", List(Word(Scopes.All), 6)),
        Req("start", Pattern(12, "^cpk_[a-z0-9]{8}$"), "The part that may be shown."),
        Req("created", Ref("Time")),
        Opt("expires", Ref("Time")),
        Opt("lastUsed", Ref("Time")),
    ];

    private static JsonObject EventTypes() => List(Pattern(40, "^[a-z]+\\.[a-z]+$"), 20, 1);

    private static JsonObject EndpointUrl() => new()
    {
        ["type"] = "string",
        ["format"] = "uri",
        ["pattern"] = "^https?://",
        ["maxLength"] = LongUrl,
    };

    private static JsonObject NoteOrNull()
    {
        var note = Text(200);
        note["type"] = new JsonArray("string", "null");
        return note.Says("null takes the note away.");
    }

    private static JsonObject Secret() => Pattern(100, "^whsec_[A-Za-z0-9+/=]+$");
}
