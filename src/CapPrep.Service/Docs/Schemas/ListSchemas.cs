using System.Text.Json.Nodes;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Pages of lists.</summary>
internal static class ListSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        Page("JobList", "JobListItem"),
        Page("CapStyleList", "StoredCapStyle"),
        Page("CapFrameList", "StoredCapFrame"),
        Page("MachineList", "StoredMachine"),
        Page("FramingStationList", "StoredFramingStation"),
        new("RuleBookList", PageOf(AnyBook())),
        Page("VersionList", "Version"),
        new("Version", Open(Req("version", Integer(1, int.MaxValue)), Req("sha256", Ref("Sha256")), Req("by", Text(80)), Req("at", Ref("Time")), Req("retired", Flag()))),
        new("AnyRuleBook", AnyBook()),
        Page("EndpointList", "WebhookEndpoint"),
        Page("DeliveryList", "Delivery"),
        Page("KeyList", "Key"),
        new("EventFeed", Open(
            Req("items", List(Ref("Event"), 200)),
            Req("after", Ref("EventId"), "What to send next time; given even when items is empty."),
            Req("more", Flag()))),
    ];

    private static JsonObject AnyBook() => new() { ["anyOf"] = new JsonArray(Ref("StoredRuleBook"), Ref("BuiltInRuleBook"), Ref("EffectiveRuleBook")) };

    private static KeyValuePair<string, JsonObject> Page(string name, string item) => new(name, PageOf(Ref(item)));

    private static JsonObject PageOf(JsonObject item) => Open(
        Req("items", List(item, 200)),
        Opt("cursor", Pattern(400, "^[A-Za-z0-9_-]+$"), "Where the next page begins; good for the same filters only."),
        Req("more", Flag()));
}
