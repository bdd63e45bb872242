using System.Text.Json.Nodes;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Values that many schemas share.</summary>
internal static class Basics
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("CatalogId", Pattern(63, "^[a-z0-9][a-z0-9-]{0,62}$").Says("Id of a catalog resource, a customer or a shop.")),
        new("JobId", Id(Ids.Job)),
        new("EventId", Id(Ids.Event)),
        new("EndpointId", Id(Ids.Webhook)),
        new("DeliveryId", Id(Ids.Delivery)),
        new("DropId", Id(Ids.Drop)),
        new("KeyId", Id(Ids.Key)),
        new("DecisionId", Id(Ids.Decision)),
        new("Time", Pattern(24, "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\\.[0-9]{3}Z$").Formatted("date-time").Says("RFC 3339, UTC, milliseconds.")),
        new("Day", Pattern(10, "^[0-9]{4}-[0-9]{2}-[0-9]{2}$").Formatted("date")),
        new("Sha256", Pattern(64, "^[0-9a-fA-F]{64}$").Says("SHA-256, hex; answers write it in lower case.")),
        new("Color", Pattern(7, "^#[0-9A-Fa-f]{6}$")),
        new("Pointer", AnyText(400).Says("JSON pointer (RFC 6901).")),
        new("RuleId", Pattern(60, "^[a-z]+\\.[a-z0-9-]+$")),
        new("Position", Number(-1000, 1000).Says("mm")),
        new("Quantity", Open(Req("value", Number(-1e9, 1e9)), Req("unit", Text(20)))),
        new("VersionedId", Open(Req("id", Ref("CatalogId")), Req("version", Integer(1, int.MaxValue)))),
        new("Box", Open(Req("left", Ref("Position")), Req("bottom", Ref("Position")), Req("right", Ref("Position")), Req("top", Ref("Position")))
            .Says("mm on the cap's front: x from the center seam to the viewer's right, y from the brim seam up the crown.")),
        new("Point", Open(Req("x", Ref("Position")), Req("y", Ref("Position"))).Says("mm")),
        new("Actor", Word<Actor>()),
        new("NamedColor", Closed(Opt("name", Text(60)), Opt("color", Ref("Color"))).Says("A name, a color or both.")),
    ];

    private static JsonObject Id(string prefix) => Pattern(36, $"^{prefix}[0-9a-f]{{32}}$");

    private static JsonObject Formatted(this JsonObject schema, string format)
    {
        schema["format"] = format;
        return schema;
    }
}
