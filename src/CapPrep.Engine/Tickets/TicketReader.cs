using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

/// <summary>
/// Reads a ticket from JSON. Every fault is reported with its pointer: members that are missing, unknown or stand
/// twice, wrong types, values out of bounds, and members that contradict each other. Whether an id is known is not
/// looked at here.
/// </summary>
public static class TicketReader
{
    /// <summary>Most caps, in an order, a lot or a box.</summary>
    public const int MostCaps = 100_000;

    /// <summary>Highest color block a ticket can name, and the most threads it can list.</summary>
    public const int MostBlocks = 1_000;

    /// <summary>Most lots in an order, and most sizes in a lot.</summary>
    public const int MostLots = 50;

    /// <summary>Longest <see cref="Ticket.Echo"/>, in bytes.</summary>
    public const int MostEchoBytes = 4_096;

    /// <summary>Deepest nesting inside <see cref="Ticket.Echo"/>.</summary>
    public const int MostEchoLevels = 8;

    /// <summary>The name of a ticket among the parts of a request, as in <see cref="Violation.Part"/>.</summary>
    public const string Part = "ticket";

    /// <summary>Names of all members of a ticket, sorted.</summary>
    public static IReadOnlyList<string> Fields { get; } = [.. TicketMembers.Names.Order(StringComparer.Ordinal)];

    /// <summary>Reads bytes of any length; a byte order mark is passed over.</summary>
    public static ReadResult<Ticket> Read(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, new Faults(Part, "A ticket"), Whole);

    private static Ticket Whole(ObjectReader reader)
    {
        reader.Require("orderNumber", "quantity");
        var ticket = TicketMembers.Read(reader);
        TicketAgreement.Check(ticket, reader);
        return ticket with { Echo = reader.Verbatim("echo", MostEchoBytes, MostEchoLevels) };
    }
}
