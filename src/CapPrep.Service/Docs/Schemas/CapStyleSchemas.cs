using System.Text.Json.Nodes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>A cap style with its zones.</summary>
internal static class CapStyleSchemas
{
    private const int Reach = 400;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        .. CatalogSchemas.Resource("CapStyle", [.. Blank(), .. Use(), Req("sources", Ref("Sources"))]),
        new("PointOfLine", List(Number(-Reach, Reach), 2, 2).Says("[x, y], mm.")),
        new("Zone", Zone()),
        new("TwoLimits", Closed(Req("warnAboveMm", Number(1, 400)), Req("holdAboveMm", Number(1, 400)))),
        new("Sewing", Sewing()),
        new("SheetStiffness", Stiffness()),
    ];

    private static Member[] Blank() =>
    [
        Req("id", Ref("CatalogId")),
        Req("name", Text(80)),
        Req("panels", Integer(0, 12)),
        Req("structure", Word<CrownStructure>()),
        Req("crownHeightMm", Number(20, 300), "Along the front seam."),
        Req("circumferenceMm", Number(400, 800)),
        Opt("centerSeam", Closed(Req("halfReachMm", Number(0, 20)), Opt("stepMm", Number(0, 30)), Opt("grooveMm", Number(0, 10)), Req("layers", Integer(1, 20))), "Absent: no seam, and no seam rule."),
        Opt("seams", List(Closed(Req("kind", Word("center", "side", "top")), Req("lineMm", List(Ref("PointOfLine"), 50, 2))), 20)),
        Opt("eyelets", List(Closed(Req("xMm", Number(-Reach, Reach)), Req("yMm", Number(-Reach, Reach)), Req("radiusMm", Number(0.5, 20))), 20)),
        Req("brim", Closed(Req("shape", Word("curved", "flat", "stiff")), Req("bowMm", Number(0, 30)), Req("depthMm", Number(10, 200)), Req("widthMm", Number(50, 400)))),
        Req("frontView", Closed(Req("radiusMm", Number(50, 150)), Req("crownSlopeDeg", Number(0, 60)))),
        Req("zones", List(Ref("Zone"), 8, 1), "One for each location that may be sewn."),
    ];

    private static Member[] Use() =>
    [
        Req("sewing", Ref("Sewing")),
        Req("framing", Closed(Req("secondsPerCap", Number(1, 3600)), Req("scatterMm", Number(0, 20)), Req("centerFoundBy", Text(120)))),
        Opt("techniques", List(Word<Technique>(), 5, 1)),
        Opt("foamHeightMm", Number(1, 200)),
        Opt("stiffener", Text(120)),
        Opt("mayBeWorkedWith", Text(40)),
        Opt("skus", List(Text(60), 500)),
        Opt("capColors", List(Closed(Opt("name", Text(60)), Opt("color", Ref("Color"))), 200)),
        Opt("sizeRange", Text(60)),
        Opt("supplierCrownMm", Number(20, 300)),
        Opt("closure", Word("strap", "snap", "closed", "stretch")),
        Opt("heatSensitive", Flag()),
        Opt("measured", Closed(Req("by", Text(60)), Req("date", Ref("Day")))),
        Opt("framingSteps", List(Ref("CatalogId"), 40)),
        Opt("shift", Ref("SheetStiffness")),
    ];

    private static JsonObject Zone() => Closed(
        Req("location", Word<CapLocation>()),
        Req("origin", Text(120), "Where x = 0 and y = 0 lie, in words."),
        Opt("originXMm", Number(-Reach, Reach)),
        Req("outlineMm", List(Ref("PointOfLine"), 200, 3), "A simple polygon."),
        Req("height", Ref("TwoLimits")),
        Req("width", Ref("TwoLimits")),
        Opt("topLine", List(Closed(Req("xMm", Number(0, Reach)), Req("warnMm", Number(1, 300)), Req("holdMm", Number(1, 300))), 50, 2), "Highest top edge by distance from the middle, linear between the points."),
        Req("brimClearance", Closed(Req("nominalMm", Number(0, 100)), Req("warnBelowMm", Number(0, 100)))),
        Req("borderMm", Number(0, 20)),
        Opt("archRadiusMm", Number(10, 200)));

    private static JsonObject Sewing() => Closed(
        Req("speedSpm", Integer(100, 2000)),
        Opt("seamSpeedSpm", Integer(100, 2000)),
        Opt("foamSpeedSpm", Integer(100, 2000)),
        Opt("metallicSpeedSpm", Integer(100, 2000)),
        Req("needle", Text(80)),
        Req("backing", Text(120)),
        Opt("backingPieces", Integer(0, 10)),
        Opt("backingWidthMm", Number(10, 1000)),
        Opt("backingHeightMm", Number(10, 1000)),
        Req("soften", Flag()),
        Opt("softening", Text(120)));

    private static JsonObject Stiffness() => Closed(
        Req("e1Fill", Number(0, 0.2)),
        Req("e1Satin", Number(0, 0.2)),
        Req("e2OverE1", Number(0, 2)),
        Req("e1NPerMm", Number(0.1, 200)),
        Req("e2NPerMm", Number(0.1, 200)),
        Req("g12NPerMm", Number(0.001, 100)),
        Req("nu12", Number(0, 0.49)),
        Req("slackShare", Number(0, 0.2)));
}
