using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>Receivers of events, what was delivered to them, and keys.</summary>
internal static class AccessOperations
{
    private const string Hooks = "Webhooks";
    private const string Keys = "Keys";
    private const string MergePatch = "application/merge-patch+json";

    private static readonly Problem[] OfBodies =
    [
        Problems.RequestMalformed, Problems.DigestMismatch, Problems.BodyTooLarge, Problems.MediaTypeUnknown, Problems.QuestionInvalid,
    ];

    public static readonly IReadOnlyList<Operation> All = [.. Endpoints(), .. Deliveries(), .. OfKeys()];

    private static IEnumerable<Operation> Endpoints() =>
    [
        new("addWebhook", Hooks, "Adds a receiver of events; answers once with its secret")
        {
            Description = "It is owed every event of its types that is committed from now on.",
            Parameters = ["contentDigest"],
            Request = [Content.Json("EndpointRequest", "webhook-request")],
            Answers = [new(201, "The endpoint with its secret, shown this once.", [Content.Json("NewWebhookEndpoint", "webhook-new")], "Location", "Cache-Control")],
            Refusals = [.. OfBodies, Problems.AddressNotAllowed],
        },
        new("listWebhooks", Hooks, "Lists the receivers of events")
        {
            Answers = [new(200, "All of them.", [Content.Json("EndpointList", "webhook-list")])],
        },
        new("getWebhook", Hooks, "Shows a receiver of events")
        {
            Parameters = ["endpointId"],
            Answers = [new(200, "The endpoint.", [Content.Json("WebhookEndpoint", "webhook")])],
            Refusals = [Problems.NotFound],
        },
        new("changeWebhook", Hooks, "Changes url, types, note or state of a receiver")
        {
            Description = "JSON merge patch (RFC 7396). Switching on forgets earlier failures; while it is off, what is owed waits.",
            Parameters = ["endpointId", "contentDigest"],
            Request = [new(MergePatch, "EndpointPatch", "webhook-patch"), Content.Json("EndpointPatch", "webhook-patch")],
            Answers = [new(200, "The endpoint as it is now.", [Content.Json("WebhookEndpoint", "webhook")])],
            Refusals = [.. OfBodies, Problems.NotFound, Problems.AddressNotAllowed],
        },
        new("removeWebhook", Hooks, "Removes a receiver; what it is still owed is given up")
        {
            Parameters = ["endpointId"],
            Answers = [Answer.Empty(204, "Removed.")],
            Refusals = [Problems.NotFound],
        },
        new("rotateWebhookSecret", Hooks, "Makes a new secret; answers once with it")
        {
            Description = "The old one signs too until the overlap ends.",
            Parameters = ["endpointId", "contentDigest"],
            Request = [Content.Json("SecretRequest", "webhook-secret-request")],
            RequestMayBeAbsent = true,
            Answers = [new(200, "The endpoint with its new secret, shown this once.", [Content.Json("NewWebhookEndpoint", "webhook-new")], "Cache-Control")],
            Refusals = [.. OfBodies, Problems.NotFound],
        },
        new("testWebhook", Hooks, "Sends one event webhook.test, once")
        {
            Description = "Whatever the endpoint's state; it counts neither for nor against it.",
            Parameters = ["endpointId"],
            Answers = [new(202, "The delivery; ask again for its attempt.", [Content.Json("Delivery", "delivery-new")], "Location")],
            Refusals = [Problems.NotFound],
        },
    ];

    private static IEnumerable<Operation> Deliveries() =>
    [
        new("listDeliveries", Hooks, "Lists deliveries to a receiver, newest first")
        {
            Description = "Attempts stand without the excerpts of answers.",
            Parameters = ["endpointId", "deliveryState", "limit", "cursor"],
            Answers = [new(200, "A page.", [Content.Json("DeliveryList", "delivery-list")])],
            Refusals = [Problems.QueryInvalid, Problems.NotFound],
        },
        new("getDelivery", Hooks, "Shows a delivery with every attempt")
        {
            Parameters = ["endpointId", "deliveryId"],
            Answers = [new(200, "The delivery.", [Content.Json("Delivery", "delivery")])],
            Refusals = [Problems.NotFound],
        },
    ];

    private static IEnumerable<Operation> OfKeys() =>
    [
        new("listKeys", Keys, "Lists the keys that have not been ended")
        {
            Description = "`manage` sees the keys of its own shop, `operate` those of every shop.",
            Answers = [new(200, "All of them.", [Content.Json("KeyList", "key-list")])],
        },
        new("addKey", Keys, "Makes a key; answers once with it")
        {
            Description = "The first key for a shop opens the shop. Keys of another shop, and keys that may operate, need the scope `operate`.",
            Parameters = ["contentDigest"],
            Request = [Content.Json("KeyRequest", "key-request")],
            Answers = [new(201, "The key, shown this once.", [Content.Json("NewKey", "key-new")], "Cache-Control")],
            Refusals = OfBodies,
        },
        new("endKey", Keys, "Ends a key at once")
        {
            Parameters = ["keyId"],
            Answers = [Answer.Empty(204, "Ended.")],
            Refusals = [Problems.NotFound],
        },
    ];
}
