using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

/// <summary>What the members of a ticket must not say against each other.</summary>
internal static class TicketAgreement
{
    internal static void Check(Ticket ticket, ObjectReader reader)
    {
        OneWayToNameTheCap(reader);
        LotsAddUp(ticket, reader);
    }

    private static void OneWayToNameTheCap(ObjectReader reader)
    {
        var byStyle = reader.Holds("capStyle");
        var bySku = reader.Holds("capSku");
        if (byStyle && bySku)
            reader.Faults.Add(reader.PointerTo("capSku"), ViolationCodes.Contradicts, "A ticket names its cap by 'capStyle' or by 'capSku', not by both.");
        if (!byStyle && !bySku)
            reader.Faults.Add(reader.PointerTo("capStyle"), ViolationCodes.Required, "A ticket needs a field 'capStyle' or 'capSku'.");
    }

    /// <summary>Says nothing where a quantity or a lot is faulty itself.</summary>
    private static void LotsAddUp(Ticket ticket, ObjectReader reader)
    {
        var pointer = reader.PointerTo("capLots");
        if (ticket.CapLots is not { } lots || ticket.Quantity == 0 || reader.Faults.Under(pointer))
            return;
        var caps = lots.Sum(lot => lot.Quantity);
        if (caps != ticket.Quantity)
            reader.Faults.Add(pointer, ViolationCodes.Contradicts, $"The lots hold {caps} caps, the ticket {ticket.Quantity}.");
    }
}
