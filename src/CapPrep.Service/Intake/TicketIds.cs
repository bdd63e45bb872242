using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Service.Intake;

/// <summary>The catalog ids that a ticket names; null where it names none.</summary>
internal sealed record TicketIds(
    string? CapStyle, string? CapSku, string? Machine, string? CapFrame, string? FramingStation, string? RuleBook)
{
    public static TicketIds Of(Ticket ticket) =>
        new(ticket.CapStyle, ticket.CapSku, ticket.Machine, ticket.CapFrame, ticket.FramingStation, ticket.RuleBook);

    /// <summary>
    /// The ids of a ticket that has faults, so that unknown ids are told together with the faults; null where the bytes
    /// are no JSON object.
    /// </summary>
    public static TicketIds? Of(byte[] faulty)
    {
        TicketIds? ids = null;
        JsonBody.Read(faulty, new Faults(TicketReader.Part, "A ticket"), reader =>
            ids = new TicketIds(reader.Id("capStyle"), null, reader.Id("machine"), reader.Id("capFrame"), reader.Id("framingStation"), reader.Id("ruleBook")));
        return ids;
    }
}
