using System.Text.Json.Nodes;
using CapPrep.Engine.Briefs;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What the digitizer and the order desk are told.</summary>
internal static class BriefSchemas
{
    private const int MostBlocks = 200_000;
    private const int MostPoints = 10;
    private const int MostPlaces = 5;
    private const int Sentence = 400;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("BriefPoint", Point()),
        new("BriefTerms", Terms()),
        new("BriefStep", Step()),
        new("WaysOut", WaysOut()),
    ];

    private static JsonObject Point() => Open(
        Req("step", Integer(1, MostPoints)),
        Req("who", Const("digitizer")),
        Req("finding", Integer(1, 500), "Number of the finding it comes from."),
        Req("rule", Text(60)),
        Req("mustChange", Flag(), "The design is not sewn before this is done."),
        Opt("mark", Integer(1, 500), "Number of its worst place in the proof."),
        Req("message", Text(LongText)),
        Opt("measured", Ref("Quantity")),
        Opt("wanted", Open(Req("is", Word<LimitIs>()), Req("value", Number(-100_000, 1_000_000)), Req("unit", Text(40)))),
        Req("why", Text(Sentence)),
        Req("how", Text(Sentence)),
        Req("count", Count(), "All places."),
        Req("places", List(Place(), MostPlaces), "The worst."));

    private static JsonObject Place() => Open(
        Opt("mark", Integer(1, 500)),
        Req("words", AnyText(200), "From the seam and from the design's base."),
        Opt("boxMm", Ref("Box")),
        Req("blocks", List(Integer(1, MostBlocks), MostBlocks), "Color blocks of the received tape."),
        Opt("stitches", Open(Req("first", Integer(1, int.MaxValue)), Req("last", Integer(1, int.MaxValue))), "Penetrations of the received tape."),
        Opt("measured", Ref("Quantity")));

    private static JsonObject Terms() => Open(
        Req("cap", Open(
            Opt("style", Text(120)),
            Req("centerSeam", Flag()),
            Opt("structure", Word<CrownStructure>()),
            Req("location", Word<CapLocation>()),
            Opt("zoneWidthMm", Number(0, 1000)),
            Opt("zoneHeightMm", Number(0, 1000)),
            Opt("baseAboveBrimMm", Ref("Position")),
            Req("technique", Word<Technique>()),
            Req("threadWeightWt", Integer(20, 100)),
            Req("held", Text(60)))),
        Req("keep", Open(
            Req("widthMm", Number(0, 10_000)),
            Req("heightMm", Number(0, 10_000)),
            Req("sizeMayChangeBySteps", List(Integer(1, MostPoints), MostPoints), "Empty: the size stays."),
            Req("colors", Count()),
            Req("threads", List(Open(Req("block", Integer(1, MostBlocks)), Opt("name", Text(60)), Opt("color", Ref("Color")), Opt("code", Text(40))), 1000)))),
        Req("pointsLeftOut", Count()),
        Req("wantedOrder", List(Ref("BriefStep"), MostBlocks)),
        Req("atMost", Open(Req("stitches", Count()), Req("trims", Count()), Req("colorChanges", Count()))),
        Req("sendBack", List(Text(Sentence), 20)));

    private static JsonObject Step() => Open(
        Req("number", Integer(1, MostBlocks)),
        Req("what", Text(60)),
        Req("block", Integer(1, MostBlocks), "Color block of the received tape."),
        Req("elements", List(Integer(1, MostBlocks), MostBlocks)),
        Req("boxMm", Ref("Box")),
        Req("stopBefore", Word<BriefStop>(), "`deliberate`: a person lays, places or cuts something."),
        Opt("action", Word<StopAction>()),
        Opt("enterLettersOn", List(Word<LetterEntry>(), 2000), "Of a text line, from the viewer's left."));

    private static JsonObject WaysOut() => Open(
        Req("otherStyles", List(Open(Req("id", Text(60)), Req("name", Text(120))), 500), "Cap styles that take the design as it is."),
        Opt("scaledTape", Open(
            Req("scale", Number(0.9, 1)), Req("widthMm", Number(0, 10_000)), Req("heightMm", Number(0, 10_000)),
            Opt("smallestLetterMm", Number(0, 1000)), Req("says", Text(Sentence))), "The same cap with the tape made smaller."),
        Opt("newDigitizing", Open(Req("widthMm", Number(0, 10_000)), Req("heightMm", Number(0, 10_000)), Req("says", Text(Sentence)))))
        .Says("What the order desk can do about a design that is too large; nothing of it is done by itself.");
}
