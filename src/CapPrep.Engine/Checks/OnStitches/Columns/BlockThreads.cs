using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>What the ticket says of the thread that a piece is sewn with; lots may each have their own.</summary>
internal static class BlockThreads
{
    /// <summary>Weight number of the thickest of them.</summary>
    internal static int WeightWt(Subject subject, Piece piece) =>
        Of(subject, piece).Select(thread => thread.WeightWt ?? subject.Ticket.ThreadWeightWt).DefaultIfEmpty(subject.Ticket.ThreadWeightWt).Min();

    internal static bool IsMetallic(Subject subject, Piece piece) => Of(subject, piece).Any(thread => thread.Kind == ThreadKind.Metallic);

    private static IEnumerable<TicketThread> Of(Subject subject, Piece piece) => ThreadList.Of(subject.Ticket.Received)
        .SelectMany(list => list.Threads)
        .Where(thread => thread.Block == piece.Block);
}
