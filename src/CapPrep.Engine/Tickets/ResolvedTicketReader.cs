using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

/// <summary>Reads what <see cref="ResolvedTicketWriter"/> wrote.</summary>
public static class ResolvedTicketReader
{
    /// <summary>The same resolved ticket, but for <see cref="Ticket.Echo"/>, which is not written.</summary>
    /// <exception cref="FormatException">The bytes are not what the writer writes.</exception>
    public static ResolvedTicket Read(ReadOnlyMemory<byte> utf8)
    {
        var result = JsonBody.Read(utf8, new Faults(TicketReader.Part, "A resolved ticket"), Whole);
        return result.Value ?? throw new FormatException(Told(result.Violations[0]));
    }

    private static ResolvedTicket? Whole(ObjectReader reader)
    {
        reader.Require(
            "orderNumber", "quantity", "line", "location", "design", "machine", "capFrame", "framingStation",
            "ruleBook", "seating", "technique", "tapeIs", "sewOrder", "inspection", "threadWeightWt", "defaulted");
        var filled = TicketMembers.Read(reader);
        var threadWeightWt = reader.Integer("threadWeightWt", 20, 100);
        var defaulted = reader.Texts("defaulted", 100, 100);
        return reader.Faults.Any ? null : Resolved(filled, threadWeightWt!.Value, defaulted!);
    }

    private static ResolvedTicket Resolved(Ticket filled, int threadWeightWt, IReadOnlyList<string> defaulted)
    {
        var shop = new ShopDefaults(filled.Machine!, filled.FramingStation!, filled.RuleBook!, threadWeightWt);
        var resolved = TicketResolver.Resolve(filled, shop, filled.CapStyle, filled.CapFrame!, fileName: null);
        return resolved with { Received = Defaults.Emptied(filled, defaulted), Defaulted = defaulted };
    }

    private static string Told(Violation fault) =>
        $"A stored ticket cannot be read: {fault.Pointer ?? "byte " + fault.ByteOffset}: {fault.Message}";
}
