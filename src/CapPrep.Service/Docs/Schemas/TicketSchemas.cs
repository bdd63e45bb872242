using System.Text.Json.Nodes;
using CapPrep.Engine.Tickets;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>The ticket, as callers send it and with its defaults filled in.</summary>
internal static class TicketSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Ticket", Whole()),
        new("ResolvedTicket", Resolved()),
        new("TicketSeating", Seating()),
        new("TicketThread", Thread()),
        new("TicketSewOrder", SewOrder()),
        new("ExpectedSize", Closed(Opt("widthMm", Number(1, 400)), Opt("heightMm", Number(1, 400)))),
        new("CapLot", Lot()),
        new("Echo", Anything().Says($"Any JSON of at most {TicketReader.MostEchoBytes} bytes and {TicketReader.MostEchoLevels} levels; comes back byte for byte in the job, the result and every event.")),
        new("JobRequest", Closed(Req("ticket", Ref("Ticket")), Req("tape", Base64(), "The stitch file, base64."))),
        new("JobParts", Closed(Req("ticket", Ref("Ticket")), Req("tape", File(), "The stitch file."))),
    ];

    private static JsonObject Whole()
    {
        var ticket = Closed([.. Order(), .. Places(), .. Work()]);
        ticket["oneOf"] = new JsonArray(Needs("capStyle"), Needs("capSku"));
        return ticket;
    }

    private static JsonObject Resolved() => Open(
    [
        .. Order(), .. Places(), .. Work().Where(member => member.Name != "echo"),
        Req("threadWeightWt", Integer(20, 100), "Weight of threads that name none."),
        Req("defaulted", List(Ref("Pointer"), 40), "What the ticket left open and the service filled in."),
    ]);

    private static Member[] Order() =>
    [
        Req("orderNumber", Text(64)),
        Opt("capStyle", Ref("CatalogId"), "Either capStyle or capSku."),
        Opt("capSku", Text(60), "Article number of the blank, looked up in the styles' skus."),
        Req("quantity", Integer(1, TicketReader.MostCaps)),
        Opt("line", Text(32), "Order line; \"1\" unless given."),
        Opt("orderLines", Integer(1, 1000), "How many jobs make the order whole; without it there is no order.finished."),
        Opt("customer", Ref("CatalogId"), "Chooses overrides of the rule book."),
        Opt("design", Text(120), "Printed; the file's name unless given."),
        Opt("dueDate", Ref("Day"), "Printed, not used."),
        Opt("digitizer", Text(60), "A filter of the job list."),
    ];

    private static Member[] Places() =>
    [
        Opt("location", Word<CapLocation>(), "Left and right are the wearer's; front unless given."),
        Opt("machine", Ref("CatalogId"), "The shop's unless given, as for the next three."),
        Opt("capFrame", Ref("CatalogId"), "The machine's first unless given."),
        Opt("framingStation", Ref("CatalogId")),
        Opt("ruleBook", Ref("CatalogId")),
        Opt("seating", Ref("TicketSeating")),
        Opt("expectedSize", Ref("ExpectedSize"), "Compared with the tape when given."),
    ];

    private static Member[] Work() =>
    [
        Opt("threads", Threads()),
        Opt("sewOrder", Ref("TicketSewOrder")),
        Opt("technique", Word<Technique>()),
        Opt("tapeIs", Word<TapeOrientation>(), "Whether the tape is turned by 180 degrees for the cap frame already."),
        Opt("capColor", Ref("NamedColor"), "Without it contrast is not judged."),
        Opt("capLots", List(Ref("CapLot"), TicketReader.MostLots, 1), "Their quantities add up to quantity."),
        Opt("blanks", Integer(1, TicketReader.MostCaps), "Caps in the box."),
        Opt("inspection", Word<InspectionPlan>()),
        Opt("tapeSha256", Ref("Sha256"), "Refused when the tape is another."),
        Opt("echo", Ref("Echo")),
    ];

    private static JsonObject Seating() => Closed(
        Opt("by", Word<SeatingBase>(), "What comes to the base: the box of the stitches, or the tape's origin."),
        Opt("centerBy", Word<SeatingCenter>(), "What comes onto the center seam."),
        Opt("centerXMm", Number(-200, 200), "With centerBy x only."),
        Opt("baseAboveBrimMm", Number(0, 100), "The style's nominal clearance unless given."),
        Opt("offsetRightMm", Number(-200, 200), "To the viewer's right."));

    private static JsonObject Thread() => Closed(
        Req("block", Integer(1, TicketReader.MostBlocks), "Color block of the tape, from 1."),
        Opt("name", Text(60)),
        Opt("color", Ref("Color")),
        Opt("code", Text(40)),
        Opt("weightWt", Integer(20, 100)),
        Opt("kind", Word<ThreadKind>()),
        Opt("foam", Flag()),
        Opt("action", Word<StopAction>(), "What a person does at the stop before this block."));

    private static JsonObject SewOrder() => Closed(
        Opt("mode", Word<SewOrderMode>()),
        Opt("allowExtraColorChanges", Integer(0, 20)),
        Opt("allowExtraTrims", Integer(0, 200)),
        Opt("extraMinutes", Number(0, 600)));

    private static JsonObject Lot() => Closed(
        Opt("capSku", Text(60)),
        Opt("capColor", Ref("NamedColor")),
        Opt("sizes", List(Closed(Req("size", Text(20)), Req("quantity", Integer(1, TicketReader.MostCaps))), TicketReader.MostLots, 1)),
        Req("quantity", Integer(1, TicketReader.MostCaps)),
        Opt("threads", Threads()));

    private static JsonObject Threads() => List(Ref("TicketThread"), TicketReader.MostBlocks, 1);

    private static JsonObject Needs(string member) => new() { ["required"] = new JsonArray(member) };

    private static JsonObject Anything() => [];

    private static JsonObject Base64() => new()
    {
        ["type"] = "string",
        ["format"] = "byte",
        ["contentEncoding"] = "base64",
        ["minLength"] = 4,
        ["maxLength"] = 1_398_104,
    };

    private static JsonObject File() => new()
    {
        ["type"] = "string",
        ["format"] = "binary",
        ["contentMediaType"] = "application/octet-stream",
        ["maxLength"] = 1_048_576,
    };
}
