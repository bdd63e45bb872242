using System.Text.Json.Nodes;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What one check reports.</summary>
internal static class FindingSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Finding", Whole()),
        new("AppliedLimit", Limit()),
        new("Place", Where()),
        new("Remedy", Open(Req("who", Ref("Actor")), Req("message", Text(LongText)))),
        new("Source", Open(Req("row", Text(10)), Req("title", Text(400)), Req("publisher", Text(200)), Opt("year", Integer(1900, 2100)))
            .Says("A published row of the fact table.")),
    ];

    private static JsonObject Whole() => Open(
        Req("number", Integer(1, 10_000)),
        Req("rule", Ref("RuleId")),
        Req("severity", Word<Severity>()),
        Req("state", Word<FindingState>(), "open: still there on the tape to sew; solved: gone with the proposed order; introduced: only with it."),
        Req("count", Count(), "All occurrences, also those not listed."),
        Req("message", Text(LongText)),
        Opt("measured", Ref("Quantity"), "The worst."),
        Req("limit", Ref("AppliedLimit")),
        Req("places", List(Ref("Place"), 20), "The worst, in reading order: bottom to top, then left to right."),
        Opt("remedy", Ref("Remedy")));

    private static JsonObject Limit() => Open(
        Req("is", Word<LimitIs>()),
        Opt("value", Number(-1e9, 1e9), "Absent with is none."),
        Opt("unit", Text(20)),
        Req("level", Word<Severity>()),
        Req("kind", Word<LimitKind>()),
        Opt("source", Ref("Source")),
        Req("setBy", Open(Req("ruleBook", Ref("CatalogId")), Req("version", Integer(1, int.MaxValue)))));

    private static JsonObject Where() => Open(
        Req("at", Word<PlaceKind>(), "capFront has a box, tape a record and a byte offset, ticket a pointer."),
        Opt("mark", Integer(1, 10_000), "The number drawn in the proof."),
        Opt("boxMm", Ref("Box")),
        Opt("elements", List(Integer(1, 1_000_000), 200_000)),
        Opt("blocks", List(Integer(1, 200_000), 200_000)),
        Opt("stitches", Open(Req("first", Count()), Req("last", Count())), "Penetrations of the received tape, from 1."),
        Opt("measured", Ref("Quantity")),
        Opt("record", Count()),
        Opt("byteOffset", Integer(0, long.MaxValue / 1024)),
        Opt("pointer", Ref("Pointer")));
}
