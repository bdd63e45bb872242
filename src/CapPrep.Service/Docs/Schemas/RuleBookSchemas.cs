using System.Text.Json.Nodes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>A shop's rule book, the built-in one, and the rows in force.</summary>
internal static class RuleBookSchemas
{
    private const int MostRules = 500;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        .. CatalogSchemas.Resource("RuleBook", Book()),
        new("RuleChange", Change()),
        new("LimitChange", new JsonObject { ["oneOf"] = new JsonArray(Number(-1000, 1_000_000), Word("always", "off")) }),
        new("OrderSettings", Closed(Opt("extraColorChanges", Integer(0, 20)), Opt("extraTrims", Integer(0, 200)), Opt("startEndAtBottomCenter", Flag()))),
        new("RuleRow", Row()),
        new("BuiltInRuleBook", BuiltIn()),
        new("EffectiveRule", EffectiveRow()),
        new("EffectiveRuleBook", Effective()),
    ];

    private static Member[] Book() =>
    [
        Req("id", Ref("CatalogId")),
        Req("name", Text(80)),
        Opt("basedOn", Const("house")),
        Opt("sewOrder", Ref("OrderSettings")),
        Opt("rules", Map(Ref("RuleChange"), MostRules), "Rule id to what changes."),
        Opt("overrides", List(Override(), 500), "Applied in this order, each on top of the one before."),
    ];

    private static JsonObject Override() => Closed(
        Req("when", When(), "All of them must match."),
        Req("rules", Map(Ref("RuleChange"), MostRules)),
        Opt("because", Text(400)));

    private static JsonObject When() => Closed(Opt("customer", Ref("CatalogId")), Opt("capStyle", Ref("CatalogId")), Opt("location", Word<CapLocation>()));

    private static JsonObject Change() => Closed(
        Opt("unit", Text(20), "Checked against the rule's own."),
        Opt("limits", Closed(Opt("note", Ref("LimitChange")), Opt("warn", Ref("LimitChange")), Opt("hold", Ref("LimitChange")))),
        Opt("off", Flag()));

    private static JsonObject BuiltIn() => Open(
        Req("id", Const("house")),
        Req("version", Integer(1, int.MaxValue)),
        Req("builtIn", Flag()),
        Opt("sewOrder", Ref("OrderSettings")),
        Opt("rules", List(Ref("RuleRow"), MostRules), "Left out of lists."),
        Req("by", Text(80)),
        Req("at", Ref("Time")),
        Req("retired", Flag()));

    private static JsonObject Effective() => Open(
        Req("id", Ref("CatalogId")),
        Req("version", Integer(1, int.MaxValue)),
        Req("effective", Flag()),
        Req("when", When()),
        Req("sewOrder", Ref("OrderSettings")),
        Req("rules", List(Ref("EffectiveRule"), MostRules)));

    private static JsonObject EffectiveRow() => Open(
        Req("rule", Ref("RuleId")),
        Req("group", Text(20)),
        Req("says", Text(200)),
        Req("off", Flag()),
        Req("measures", Text(200)),
        Req("unit", Text(20)),
        Req("is", Word<LimitIs>()),
        Req("limits", List(EffectiveLimit(), 3)),
        Req("parameters", Map(Number(-1_000_000, 1_000_000), 50)),
        Req("kind", Word<LimitKind>()),
        Req("sources", List(Open(Req("row", Text(10))), 10)));

    private static JsonObject EffectiveLimit() => Open(
        Req("level", Word<Severity>()),
        Opt("value", Number(-1000, 1_000_000)),
        Opt("from", Text(20), "Where in the catalog the number stands."),
        Opt("pointer", Text(60)),
        Opt("plus", Number(-1000, 1000)),
        Req("setBy", Open(Req("ruleBook", Ref("CatalogId")), Req("version", Integer(1, int.MaxValue)))));

    private static JsonObject Row() => Open(
        Req("rule", Ref("RuleId")),
        Req("group", Text(20)),
        Req("says", Text(200)),
        Req("appliesTo", Open(Req("locations", List(Word<CapLocation>(), 8)), Req("heldBy", List(Word<FrameHold>(), 4)), Req("techniques", List(Word<Technique>(), 5)), Req("centerSeamOnly", Flag())), "An empty list: everywhere."),
        Req("measures", Text(200)),
        Req("unit", Text(20)),
        Req("is", Word<LimitIs>()),
        Req("limits", Open(Opt("note", RowLimit()), Opt("warn", RowLimit()), Opt("hold", RowLimit()))),
        Req("parameters", Map(Number(-1_000_000, 1_000_000), 50)),
        Req("asks", Open(Opt("note", Word<Asks>()), Opt("warn", Word<Asks>()), Req("hold", Word<Asks>()))),
        Opt("remedy", Ref("Remedy")),
        Req("kind", Word<LimitKind>()),
        Req("sources", List(Open(Req("row", Text(10))), 10)),
        Opt("holdStaysAtLeastWarn", Flag()));

    private static JsonObject RowLimit() => new()
    {
        ["oneOf"] = new JsonArray(
            Number(-1000, 1_000_000),
            Const("always"),
            Open(Req("from", Text(20)), Req("pointer", Text(60)), Opt("plus", Number(-1000, 1000)))),
    };
}
