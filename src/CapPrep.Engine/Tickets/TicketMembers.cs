using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

/// <summary>The members of a ticket, each within its own bounds; <c>echo</c> is read by whoever wants it.</summary>
internal static class TicketMembers
{
    /// <summary>All of them, in the order in which they are written.</summary>
    internal static readonly IReadOnlyList<string> Names =
    [
        "orderNumber", "capStyle", "capSku", "quantity", "line", "orderLines", "customer", "design", "location",
        "machine", "capFrame", "framingStation", "ruleBook", "seating", "expectedSize", "threads", "sewOrder",
        "dueDate", "technique", "tapeIs", "capColor", "capLots", "blanks", "digitizer", "inspection", "tapeSha256",
        "echo",
    ];

    internal static Ticket Read(ObjectReader reader) => new()
    {
        OrderNumber = reader.Text("orderNumber", 64) ?? "",
        CapStyle = reader.Id("capStyle"),
        CapSku = reader.Text("capSku", 60),
        Quantity = reader.Integer("quantity", 1, TicketReader.MostCaps) ?? 0,
        Line = reader.Text("line", 32),
        OrderLines = reader.Integer("orderLines", 1, 1_000),
        Customer = reader.Id("customer"),
        Design = reader.Text("design", 120),
        Location = reader.Choice("location", Words<CapLocation>.Standard),
        Machine = reader.Id("machine"),
        CapFrame = reader.Id("capFrame"),
        FramingStation = reader.Id("framingStation"),
        RuleBook = reader.Id("ruleBook"),
        Seating = reader.Object("seating", SeatingMembers.Read),
        ExpectedSize = reader.Object("expectedSize", SizeMembers.Read),
        Threads = ThreadMembers.Read(reader),
        SewOrder = reader.Object("sewOrder", SewOrderMembers.Read),
        DueDate = reader.Date("dueDate"),
        Technique = reader.Choice("technique", Words<Technique>.Standard),
        TapeIs = reader.Choice("tapeIs", Words<TapeOrientation>.Standard),
        CapColor = reader.Object("capColor", ColorMembers.Read),
        CapLots = CapLotMembers.Read(reader),
        Blanks = reader.Integer("blanks", 1, TicketReader.MostCaps),
        Digitizer = reader.Text("digitizer", 60),
        Inspection = reader.Choice("inspection", Words<InspectionPlan>.Standard),
        TapeSha256 = reader.Sha256("tapeSha256"),
    };
}
