using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Production;

/// <summary>Which needle sews which color block, in the order of the tape.</summary>
internal static class NeedlePlan
{
    internal static IReadOnlyList<NeedleStep> Of(StitchSequence stitches, Ticket ticket, Machine machine)
    {
        var threads = ThreadsOf(ticket);
        var counts = CountsOf(stitches);
        return [.. Enumerable.Range(1, stitches.Blocks).Select(block => Step(block, counts[block], threads, machine))];
    }

    private static NeedleStep Step(int block, int stitches, IReadOnlyList<TicketThread> threads, Machine machine)
    {
        var thread = threads.FirstOrDefault(thread => thread.Block == block);
        return new NeedleStep(
            Step: block,
            Block: block,
            Needle: thread is null ? null : NeedleWith(thread, machine.Threads),
            Thread: thread,
            Stitches: stitches,
            Action: thread?.Action ?? StopAction.None);
    }

    /// <summary>The order's own threads, or those of its only lot; lots with threads of their own are planned one by one.</summary>
    private static IReadOnlyList<TicketThread> ThreadsOf(Ticket ticket) =>
        ticket.Threads is { Count: > 0 } threads ? threads
        : ticket.CapLots is [var only] ? only.Threads
        : [];

    private static int[] CountsOf(StitchSequence stitches)
    {
        var counts = new int[stitches.Blocks + 1];
        foreach (var block in stitches.Block)
            counts[block]++;
        return counts;
    }

    /// <summary>By code, then by name, then by color; a needle with another code is never taken for the same thread.</summary>
    private static int? NeedleWith(TicketThread thread, IReadOnlyList<NeedleThread> needles)
    {
        var possible = needles
            .Where(needle => thread.Code is null || needle.Code is null || Same(thread.Code, needle.Code))
            .OrderBy(needle => needle.Needle)
            .ToArray();
        var found = possible.FirstOrDefault(needle => thread.Code is not null && Same(thread.Code, needle.Code))
            ?? possible.FirstOrDefault(needle => thread.Name is not null && Same(thread.Name, needle.Name))
            ?? possible.FirstOrDefault(needle => thread.Color is not null && Same(thread.Color, needle.Color));
        return found?.Needle;
    }

    private static bool Same(string wanted, string? given) =>
        string.Equals(wanted, given, StringComparison.OrdinalIgnoreCase);
}
