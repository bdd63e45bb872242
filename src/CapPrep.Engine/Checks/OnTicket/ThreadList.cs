using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>One list of threads in a ticket: the order's own, or that of one lot of caps.</summary>
/// <param name="Pointer">JSON pointer of the list.</param>
internal sealed record ThreadList(string Pointer, IReadOnlyList<TicketThread> Threads)
{
    /// <summary>All lists that name a thread; empty when the ticket names none.</summary>
    internal static IReadOnlyList<ThreadList> Of(Ticket ticket) =>
    [
        .. new[] { new ThreadList("/threads", ticket.Threads ?? []) }
            .Concat((ticket.CapLots ?? []).Select((lot, i) => new ThreadList($"/capLots/{Figure.Plain(i, 0)}/threads", lot.Threads)))
            .Where(list => list.Threads.Count > 0),
    ];

    /// <summary>Blocks 1 to <paramref name="blocks"/> that the list does not name.</summary>
    internal IReadOnlyList<int> Unnamed(int blocks) =>
        [.. Enumerable.Range(1, blocks).Where(block => Threads.All(thread => thread.Block != block))];

    /// <summary>Blocks that the list names and the tape does not have.</summary>
    internal IReadOnlyList<int> Surplus(int blocks) =>
        [.. Threads.Select(thread => thread.Block).Where(block => block > blocks).Order()];

    /// <summary>Threads that differ from each other; a block without a thread counts as one of its own.</summary>
    internal int Distinct(int blocks) =>
        Threads.Where(thread => thread.Block <= blocks).Select(Identity).Distinct().Count() + Unnamed(blocks).Count;

    /// <summary>The code where there is one, else name and color.</summary>
    private static string Identity(TicketThread thread) =>
        thread.Code is { } code ? $"code {code}" : $"{thread.Name}, {thread.Color}, {Figure.Plain(thread.WeightWt ?? 0, 0)}";
}
