using System.Text.Json.Nodes;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Planning;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What the result document says of the sew order and of the proof that nothing was lost.</summary>
internal static class SewOrderSchemas
{
    private const int MostElements = 1500;
    private const int MostPairs = 2000;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Reading", Open(
            Req("stitchesAssignedShare", Share(), "Share of the stitches whose kind is known without doubt."),
            Req("doubtful", List(Open(
                Req("element", Integer(1, 200_000)),
                Req("readAs", Word<StitchClass>()),
                Opt("boxMm", Ref("Box")),
                Req("stitches", Open(Req("first", Integer(1, int.MaxValue)), Req("last", Integer(1, int.MaxValue))))), 20), "The largest pieces that could be something else."),
            Req("limits", List(Word<ReadingLimit>(), 5), "Why the design was read more coarsely than it is made; empty for every design that a cap can hold."))),
        new("OrderFacts", OrderFacts()),
        new("SewOrder", SewOrder()),
        new("SewElement", Element()),
        new("Certificate", Certificate()),
        new("TradeOff", TradeOff()),
        new("LossCheck", LossCheck()),
    ];

    private static JsonObject OrderFacts() => Open(
        Opt("decided", Flag(), "False: there is nothing for the order to decide."),
        Opt("orderIndex", Share(), "Share of what order can still decide that is the wrong way round."),
        Opt("lineIndex", List(Share(), 100), "For every text line the share of its letters sewn inward."),
        Opt("taglineLate", Share(), "Share of what should follow the bottom line that is sewn before it."),
        Req("colorChanges", Count()),
        Req("trims", Count()),
        Req("travelMm", Number(0, 1e9)),
        Opt("driftRatio", Number(0, 1e6), "How far the sewn moves afterward, over what it does in the received order; absent where the sheet model says nothing."));

    private static JsonObject SewOrder() => Open(
        Req("received", Ref("OrderFacts")),
        Opt("proposed", Ref("OrderFacts"), "This and what follows but 'used' is absent for a design that lies on no cap or could only be read coarsely."),
        Opt("floor", Open(Req("layersOnly", Share()), Req("colorsHeld", Share())), "What the order index cannot fall below."),
        Req("used", Word<UsedOrder>()),
        Opt("keptBecause", AnyText(LongText), "Why the received order is used."),
        Opt("settledRounds", Count(), "How often the proposed tape was read and ordered again."),
        Opt("settled", Flag(), "False: a further round would change the order again, or was not made since there are very many elements."),
        Opt("elements", List(Ref("SewElement"), MostElements), "In the received order."),
        Opt("links", Open(Req("kept", Count()), Req("cut", Count()), Req("new", Count()))),
        Opt("order", Open(Req("received", Elements()), Req("proposed", Elements()))),
        Opt("moves", List(Open(Req("element", Element1()), Req("from", Element1()), Req("to", Element1()), Req("because", Text(200))), MostElements), "The fewest elements that must move."),
        Opt("mustFollowPairs", Count(), "All pairs whose order is fixed, those included that follow from others."),
        Opt("mustFollow", List(Open(Req("before", Element1()), Req("after", Element1()), Req("reason", Word<MustFollowReason>()), Req("overlapMm2", Number(0, 1e9))), MostPairs), "The first of the direct pairs."),
        Opt("relaxed", List(Open(Req("one", Element1()), Req("other", Element1())), MostPairs), "Pairs of one thread that overlap and may change places."),
        Opt("tagline", Elements(), "Elements of the bottom line, or of what stands for it."),
        Opt("certificate", Ref("Certificate")),
        Opt("tradeOffs", List(Ref("TradeOff"), 10), "The received order first."));

    private static JsonObject Element() => Open(
        Req("element", Element1()),
        Req("block", Integer(1, 200_000), "Color block of the received tape."),
        Req("kind", Word<ElementKind>()),
        Req("boxMm", Ref("Box")),
        Req("stitches", Count()),
        Req("tapeStitches", Open(Req("first", Count()), Req("last", Count())), "Stitch numbers in the received tape."));

    private static JsonObject Certificate() => Open(
        Req("claim", Word<CertificateClaim>()),
        Req("index", Number(0, 1000), "Order cost and trim price of the proposed order; 0.01 is one point."),
        Req("bound", Number(0, 1000), "What that sum cannot fall below."),
        Req("gapPoints", Number(0, 100_000)),
        Req("costBound", Number(0, 1000), "What the order cost alone cannot fall below, with any number of trims."),
        Req("under", List(Text(40), 10), "What the orders keep that it speaks of."),
        Req("says", Text(LongText)),
        Req("saysOfTrims", Text(LongText)));

    private static JsonObject TradeOff() => Open(
        Req("extraColorChanges", Integer(-1000, 1000)),
        Req("extraTrims", Integer(-100_000, 100_000)),
        Req("orderIndex", Share()),
        Req("lineIndexMax", Share()),
        Req("taglineLate", Share()),
        Opt("driftRatio", Number(0, 1e6)),
        Req("extraSecondsPerCap", Number(-1e9, 1e9)),
        Req("extraMinutes", Number(-1e9, 1e9), "On the whole order, with this machine."),
        Req("claim", Word<CertificateClaim>()),
        Req("chosen", Flag()),
        Req("whyNot", AnyText(LongText)));

    private static JsonObject LossCheck() => Open(
        Req("clauses", List(Open(Req("clause", Pattern(3, "^P([1-9]|10)$")), Req("passed", Flag()), Req("count", Count())), 10)),
        Req("tiesAdded", Count()),
        Req("dropped", Count(), "Penetrations of hidden ways that are no longer sewn."),
        Req("newLinks", Count()),
        Req("originShiftMm", Ref("Point")),
        Req("turned180", Flag()))
        .Says("The proof that the written tape sews what was received: P1 spans, P2 sequence, P3 threads, P4 penetrations, P5 stitches, P6 ties, P7 top view, P8 must-follow, P9 counts, P10 machine.");

    private static JsonObject Elements() => List(Element1(), MostElements);

    private static JsonObject Element1() => Integer(1, MostElements);

    private static JsonObject Share() => Number(0, 1);
}
