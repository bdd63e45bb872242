using System.Text.Json.Nodes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Cap frames, machines, framing stations and the shop, as they are sent and as they are given back.</summary>
internal static class CatalogSchemas
{
    private const int MostHeads = 60;
    private const int MostNeedles = 30;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        .. Resource("CapFrame", Frame()),
        .. Resource("Machine", Machine()),
        .. Resource("FramingStation", Station()),
        .. Resource("Shop", Shop()),
        new("Sources", Map(Text(200), 500).Says("JSON pointer to where a number comes from: rows of the fact table, house, measured, supplier or from memory.")),
        new("FieldBox", Closed(Req("left", Number(-500, 500)), Req("bottom", Number(-100, 500)), Req("right", Number(-500, 500)), Req("top", Number(-100, 500))).Says("mm")),
        new("MachineTape", Tape()),
        new("NeedleThread", NeedleThread()),
        new("Scatter", Closed(Scatter()).Says("Standard deviations of a framed cap.")),
        new("Tolerance", Tolerance()),
    ];

    /// <summary>A body as it is sent, and as it is given back with its version.</summary>
    public static IEnumerable<KeyValuePair<string, JsonObject>> Resource(string name, Member[] members)
    {
        yield return new(name, Closed(members));
        yield return new("Stored" + name, Open([.. members.Select(Again), .. Version()]));
    }

    /// <summary>What the service adds to a stored body.</summary>
    private static Member[] Version() =>
    [
        Req("version", Integer(1, int.MaxValue)),
        Req("by", Text(80), "Name of the key that stored this version, or service."),
        Req("at", Ref("Time")),
        Req("retired", Flag(), "New tickets that name it are refused."),
    ];

    private static Member Again(Member member) => member with { Schema = (JsonObject)member.Schema.DeepClone() };

    private static Member[] Frame() =>
    [
        Req("id", Ref("CatalogId")),
        Req("name", Text(80)),
        Req("fieldMm", Ref("FieldBox")),
        Req("arcDegrees", Number(0, 360)),
        Req("holds", Word<FrameHold>()),
        Req("strapTopMm", Number(0, 50)),
        Opt("postsXMm", List(Number(-400, 400), 10)),
        Opt("sidesHeldBelowMm", Number(0, 200)),
        Req("setsOwned", Integer(0, 100)),
        Opt("numbers", List(Text(10), 1000)),
        Opt("gauge", Text(60)),
        Opt("forStyles", List(Ref("CatalogId"), 1000)),
        Req("locations", List(Word<CapLocation>(), 8, 1)),
        Req("sources", Ref("Sources")),
    ];

    private static Member[] Machine() =>
    [
        Req("id", Ref("CatalogId")),
        Req("name", Text(80)),
        Req("heads", Integer(1, MostHeads)),
        Req("needles", Integer(1, MostNeedles)),
        Req("fieldMm", Closed(Req("width", Number(20, 1000)), Req("height", Number(20, 1000)))),
        Req("capFrames", List(Ref("CatalogId"), 50, 1), "The first is the default."),
        Req("speed", Closed(Req("maxSpm", Integer(100, 3000)), Req("capSpm", Integer(100, 3000))), "Stitches per minute."),
        Req("stops", Stops()),
        Req("tape", Ref("MachineTape")),
        Req("nudge", Word<Nudge>(), "What can be moved to correct a cap that hangs off center."),
        Opt("threads", List(Ref("NeedleThread"), MostNeedles), "What is on the needles now."),
        Opt("addsTies", Flag()),
        Opt("brimUpOnMachine", Flag()),
        Opt("maxStitches", Integer(1000, 100_000_000)),
        Opt("maxStops", Integer(1, 10_000)),
        Opt("headsOff", List(Integer(1, MostHeads), MostHeads)),
        Opt("headOffsets", List(Closed(Req("head", Integer(1, MostHeads)), Req("xMm", Number(-20, 20)), Req("yMm", Number(-20, 20))), MostHeads)),
        Req("sources", Ref("Sources")),
    ];

    private static JsonObject Stops() => Closed(
        Req("trimSeconds", Number(0, 600)),
        Req("colorChangeSeconds", Number(0, 600)),
        Req("breaksPer100000Stitches", Number(0, 1000)),
        Req("breakSeconds", Number(0, 3600)),
        Opt("bobbinChangeSeconds", Number(0, 3600)),
        Opt("frameSwapSecondsPerHead", Number(0, 3600)),
        Opt("swapSeconds", Number(0, 36_000)));

    private static JsonObject Tape() => Closed(
        Req("trim", Closed(Req("by", Word<TrimBy>()), Opt("count", Integer(1, 20), "Jump records that mean a trim; with by jumps only."))),
        Opt("trimPattern", Word<TrimPattern>()),
        Req("maxMoveMm", Number(1, 12.1)),
        Req("turn180", Word<TurnedBy>(), "Who turns the design for the cap frame."));

    private static JsonObject NeedleThread() => Closed(
        Req("needle", Integer(1, MostNeedles)),
        Opt("code", Text(40)),
        Opt("name", Text(60)),
        Opt("color", Ref("Color")),
        Opt("weightWt", Integer(20, 100)));

    private static Member[] Station() =>
    [
        Req("id", Ref("CatalogId")),
        Req("name", Text(80)),
        Req("persons", Integer(1, 50)),
        Req("secondsPerCap", Number(1, 3600)),
        Req("softenSecondsPerCap", Number(0, 3600)),
        Req("scatter", Ref("Scatter")),
        Opt("scatterByGroup", List(Closed([Req("group", Text(40)), .. Scatter()]), 100)),
        Req("tolerance", Ref("Tolerance")),
        Opt("language", Word("en", "es", "de")),
        Req("sources", Ref("Sources")),
    ];

    private static Member[] Scatter() =>
    [
        Req("offsetXMm", Number(0, 20)),
        Req("offsetYMm", Number(0, 20)),
        Req("tiltDeg", Number(0, 20)),
        Req("basis", Word("house", "measured")),
        Req("caps", Integer(0, 1_000_000), "How many caps it was measured on."),
    ];

    private static JsonObject Tolerance() => Closed(
        Req("aimMm", Number(0.1, 20)),
        Req("acceptMm", Number(0.1, 20)),
        Req("customerMm", Number(0.1, 50)),
        Req("aimDeg", Number(0.1, 20)),
        Req("acceptDeg", Number(0.1, 20)));

    private static Member[] Shop() =>
    [
        Opt("shop", Ref("CatalogId"), "The shop of the key; another is refused."),
        Req("name", Text(80)),
        Req("defaults", Closed(Req("machine", Ref("CatalogId")), Req("framingStation", Ref("CatalogId")), Req("ruleBook", Ref("CatalogId")), Req("threadWeightWt", Integer(20, 100)))),
        Req("paper", Word<Paper>()),
        Opt("units", Word<LengthUnits>()),
        Req("language", Word("en", "es", "de")),
        Opt("inspection", Closed(Req("level", Word("I", "II", "III")), Req("aql", Number(0.01, 10))), "General level and limit of ISO 2859-1."),
    ];
}
