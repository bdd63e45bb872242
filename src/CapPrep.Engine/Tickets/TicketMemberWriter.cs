using System.Text.Json;

namespace CapPrep.Engine.Tickets;

/// <summary>Writes the members of a ticket, but <c>echo</c>, in the order of <see cref="TicketMembers.Names"/>.</summary>
internal static class TicketMemberWriter
{
    internal static void Write(Utf8JsonWriter writer, Ticket ticket)
    {
        WriteOrder(writer, ticket);
        WriteWhereItIsSewn(writer, ticket);
        WriteDesign(writer, ticket);
        WriteCaps(writer, ticket);
    }

    private static void WriteOrder(Utf8JsonWriter writer, Ticket ticket) => writer
        .Text("orderNumber", ticket.OrderNumber)
        .Text("capStyle", ticket.CapStyle)
        .Text("capSku", ticket.CapSku)
        .Integer("quantity", ticket.Quantity)
        .Text("line", ticket.Line)
        .Integer("orderLines", ticket.OrderLines)
        .Text("customer", ticket.Customer)
        .Text("design", ticket.Design);

    private static void WriteWhereItIsSewn(Utf8JsonWriter writer, Ticket ticket) => writer
        .Word("location", ticket.Location)
        .Text("machine", ticket.Machine)
        .Text("capFrame", ticket.CapFrame)
        .Text("framingStation", ticket.FramingStation)
        .Text("ruleBook", ticket.RuleBook)
        .Object("seating", ticket.Seating, Seating);

    private static void WriteDesign(Utf8JsonWriter writer, Ticket ticket) => writer
        .Object("expectedSize", ticket.ExpectedSize, Size)
        .Objects("threads", ticket.Threads, Thread)
        .Object("sewOrder", ticket.SewOrder, SewOrder)
        .Day("dueDate", ticket.DueDate)
        .Word("technique", ticket.Technique)
        .Word("tapeIs", ticket.TapeIs);

    private static void WriteCaps(Utf8JsonWriter writer, Ticket ticket) => writer
        .Object("capColor", ticket.CapColor, Color)
        .Objects("capLots", ticket.CapLots, Lot)
        .Integer("blanks", ticket.Blanks)
        .Text("digitizer", ticket.Digitizer)
        .Word("inspection", ticket.Inspection)
        .Text("tapeSha256", ticket.TapeSha256);

    private static void Seating(Utf8JsonWriter writer, TicketSeating seating) => writer
        .Word("by", seating.By)
        .Word("centerBy", seating.CenterBy)
        .Number("centerXMm", seating.CenterXMm)
        .Number("baseAboveBrimMm", seating.BaseAboveBrimMm)
        .Number("offsetRightMm", seating.OffsetRightMm);

    private static void Size(Utf8JsonWriter writer, ExpectedSize size) => writer
        .Number("widthMm", size.WidthMm)
        .Number("heightMm", size.HeightMm);

    private static void Thread(Utf8JsonWriter writer, TicketThread thread) => writer
        .Integer("block", thread.Block)
        .Text("name", thread.Name)
        .Text("color", thread.Color)
        .Text("code", thread.Code)
        .Integer("weightWt", thread.WeightWt)
        .Word("kind", thread.Kind)
        .Flag("foam", thread.Foam)
        .Word("action", thread.Action);

    private static void SewOrder(Utf8JsonWriter writer, TicketSewOrder order) => writer
        .Word("mode", order.Mode)
        .Integer("allowExtraColorChanges", order.AllowExtraColorChanges)
        .Integer("allowExtraTrims", order.AllowExtraTrims)
        .Number("extraMinutes", order.ExtraMinutes);

    private static void Color(Utf8JsonWriter writer, NamedColor color) => writer
        .Text("name", color.Name)
        .Text("color", color.Color);

    private static void Lot(Utf8JsonWriter writer, CapLot lot) => writer
        .Text("capSku", lot.CapSku)
        .Object("capColor", lot.CapColor, Color)
        .Objects("sizes", NullIfEmpty(lot.Sizes), LotSize)
        .Integer("quantity", lot.Quantity)
        .Objects("threads", NullIfEmpty(lot.Threads), Thread);

    private static void LotSize(Utf8JsonWriter writer, LotSize size) => writer
        .Text("size", size.Size)
        .Integer("quantity", size.Quantity);

    private static IReadOnlyList<T>? NullIfEmpty<T>(IReadOnlyList<T> items) => items.Count == 0 ? null : items;
}
