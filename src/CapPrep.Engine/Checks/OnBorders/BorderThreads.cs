using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>What the ticket says of the threads of a border and its fill.</summary>
internal static class BorderThreads
{
    // Two colors that hardly anybody tells from each other at arm's length, CIEDE2000 (house).
    private const double Alike = 10;

    /// <summary>One thread, so that nothing of another color can show between the two.</summary>
    internal static bool AreOne(Border border, Subject subject) =>
        subject.Reading.Elements[border.Fill.Element].Thread == subject.Reading.Elements[border.Parts[0].Element].Thread;

    /// <summary>One thread, or two whose colors are alike in every list of threads that the ticket has.</summary>
    internal static bool AreAlike(Border border, Subject subject)
    {
        var lists = ThreadList.Of(subject.Ticket.Received);
        return AreOne(border, subject)
            || (lists.Count > 0 && lists.All(list => AreAlike(list.Threads, border.Fill.Block, border.Parts[0].Block)));
    }

    private static bool AreAlike(IReadOnlyList<TicketThread> threads, int one, int other) =>
        ColorOf(threads, one) is { } first && ColorOf(threads, other) is { } second && ColorDifference.Between(first, second) < Alike;

    private static string? ColorOf(IReadOnlyList<TicketThread> threads, int block) =>
        threads.FirstOrDefault(thread => thread.Block == block)?.Color;
}
