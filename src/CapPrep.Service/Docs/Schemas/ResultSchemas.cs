using System.Text.Json.Nodes;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>The result document of a job.</summary>
internal static class ResultSchemas
{
    private const int MostBlocks = 200_000;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Result", Open([.. Judged(), .. Known(), .. Planned()])),
        new("Summary", Open(Req("lead", Text(140)), Opt("digitizer", Text(140)), Opt("framing", Text(140)), Opt("operator", Text(140)), Opt("orderDesk", Text(140)))
            .Says("One sentence for each reader.")),
        new("FirstCap", Open(Req("is", Word<FirstCapIs>()), Req("because", List(Text(LongText), 50)))
            .Says("Whether one cap is sewn and measured before the heads are loaded.")),
        new("TapeFacts", Facts()),
        new("TapeBox", Open(Req("left", TapeMm()), Req("bottom", TapeMm()), Req("right", TapeMm()), Req("top", TapeMm())).Says("mm from the tape's start.")),
        new("Seating", Seating()),
        new("TapeToSew", ToSew()),
        new("NeedleStep", Step()),
    ];

    private static Member[] Judged() =>
    [
        Req("schema", Integer(1, 1), "Rises when a member changes its meaning."),
        Opt("job", Open(Req("id", Ref("JobId")), Req("number", Integer(1, long.MaxValue / 1024)), Req("revision", Integer(1, int.MaxValue)), Req("received", Ref("Time"))), "Absent where a tape was checked without the service."),
        Req("verdict", Word<Verdict>()),
        Req("verdictReasons", List(Ref("VerdictReason"), 500)),
        Req("actors", List(Ref("Actor"), 4)),
        Req("summary", Ref("Summary")),
        Req("firstCap", Ref("FirstCap")),
        Opt("advice", Word<Advice>(), "What a production lead may want to do although nothing holds the job."),
        Req("reading", Ref("Reading")),
        Req("accepted", List(Ref("Accepted"), 10_000), "What people have accepted before of these stitches; it stands in no other list and counts for nothing."),
        Opt("approved", Ref("Approved"), "A cap sewn from these stitches was approved before; its order is kept."),
        Opt("revision", Ref("Revision"), "Only when a job for the same order, line and location was finished before."),
        Opt("echo", Ref("Echo")),
    ];

    private static Member[] Known() =>
    [
        Opt("inputs", Ref("JobInputs")),
        Req("ticket", Ref("ResolvedTicket")),
        Req("tape", Ref("TapeFacts")),
        Opt("seating", Ref("Seating"), "Absent when the cap style is unknown."),
        Req("findings", List(Ref("Finding"), 500)),
        Req("brief", List(Ref("BriefPoint"), 10), "What the digitizer is asked to change."),
        Opt("briefTerms", Ref("BriefTerms"), "What holds for all points; absent without points."),
        Opt("waysOut", Ref("WaysOut"), "Absent unless the size holds the job."),
    ];

    private static Member[] Planned() =>
    [
        Req("sewOrder", Ref("SewOrder")),
        Opt("lossCheck", Ref("LossCheck"), "Of the tape to sew, else of the proposed tape; absent when nothing was written."),
        Opt("tapeToSew", Ref("TapeToSew"), "Absent with a return verdict."),
        Req("needlePlan", List(Ref("NeedleStep"), MostBlocks)),
        Req("shift", Ref("Shift"), "How sewing moves the cloth, by a sheet model."),
        Req("drawings", Open(Req("cardSheetSha256", Ref("Sha256")), Req("proofSheetSha256", Ref("Sha256")))),
    ];

    private static JsonObject Facts() => Open(
        Req("bytes", Count()),
        Req("sha256", Ref("Sha256")),
        Req("stitches", Count(), "Needle penetrations."),
        Req("jumps", Count()),
        Req("trims", Count()),
        Req("colorStops", Count()),
        Req("blocks", Count(), "Color blocks with at least one penetration."),
        Req("strands", Count(), "Penetrations connected by thread."),
        Req("pieces", Count()),
        Req("elements", Count(), "What moves in the sew order."),
        Req("widthMm", Number(0, 10_000)),
        Req("heightMm", Number(0, 10_000)),
        Req("extentsMm", Ref("TapeBox")),
        Req("textLines", TextLineSchemas.Lines(), "From the lowest line up; none for a design that lies on no cap."));

    private static JsonObject TapeMm() => Number(-100_000, 100_000);

    private static JsonObject Seating() => Open(
        Req("by", Word<SeatingBase>()),
        Req("centerBy", Word<SeatingCenter>()),
        Req("boxMm", Ref("Box")),
        Req("originMm", Ref("Point"), "Where the tape's start comes to lie."),
        Req("keyInMm", Ref("Point"), "What an operator keys in."),
        Req("clearancesMm", Open(Req("brim", Ref("Position")), Req("top", Ref("Position")), Req("left", Ref("Position")), Req("right", Ref("Position"))), "Negative: over the edge."),
        Req("largestScale", Number(0, 1000), "The largest size that fits, as a share of this one."));

    private static JsonObject ToSew() => Open(
        Req("sha256", Ref("Sha256")),
        Req("name", Text(60)),
        Req("bytes", Count()),
        Req("stitchesEqual", Flag(), "Every needle point, every stop and their order are the received ones."),
        Req("changes", List(Word<TapeChange>(), 7)),
        Req("originShiftMm", Ref("Point"), "How far start and end were moved against the design."));

    private static JsonObject Step() => Open(
        Req("step", Integer(1, MostBlocks)),
        Req("block", Integer(1, MostBlocks), "Color block of the received tape."),
        Opt("needle", Integer(1, 30), "Absent: a needle must be threaded."),
        Opt("thread", Open(Opt("name", Text(60)), Opt("color", Ref("Color")), Opt("code", Text(40)))),
        Req("stitches", Count()),
        Req("returns", Flag(), "The thread was on before."),
        Req("elements", List(Integer(1, MostBlocks), MostBlocks), "In the order they are sewn."),
        Req("action", Word<StopAction>(), "What a person does at the stop before it."));
}
