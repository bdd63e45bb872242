using CapPrep.Engine.Checks;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Production;

/// <summary>Which needle sews which color block, in the order of the tape.</summary>
internal static class NeedlePlan
{
    /// <summary>In the received order.</summary>
    internal static IReadOnlyList<NeedleStep> Of(Subject received)
    {
        var counts = CountsOf(received.Stitches);
        var elements = received.Reading.Elements.ToLookup(element => element.Block, element => element.Index);
        var threads = ThreadNumbers.Of(ThreadsOf(received.Ticket.Received), received.Stitches.Blocks);
        var blocks = Enumerable.Range(1, received.Stitches.Blocks);
        return
        [
            .. blocks.Select(block => Step(block, block, counts[block], received) with
            {
                Elements = [.. elements[block]],
                Returns = threads is not null && threads[block - 1] < block,
            }),
        ];
    }

    /// <summary>In the order of a plan.</summary>
    internal static IReadOnlyList<NeedleStep> Of(Subject received, SewPlan plan) =>
        [.. plan.Blocks.Select(block => Step(block.Step, block.Received, block.Stitches, received) with { Elements = block.Elements, Returns = block.Returns })];

    private static NeedleStep Step(int step, int block, int stitches, Subject received)
    {
        var thread = ThreadsOf(received.Ticket.Received).FirstOrDefault(thread => thread.Block == block);
        return new NeedleStep(
            Step: step,
            Block: block,
            Needle: thread is null ? null : NeedleWith(thread, received.Setup.Machine.Threads),
            Thread: thread,
            Stitches: stitches,
            Action: ActionBefore(block, thread, received));
    }

    /// <summary>What the ticket says, else what the stop was found to be for.</summary>
    private static StopAction ActionBefore(int block, TicketThread? thread, Subject received) =>
        thread?.Action is { } said and not StopAction.None ? said
        : received.DeliberateStops.Where(stop => stop.Behind == block - 1).Select(stop => stop.Action).FirstOrDefault();

    /// <summary>The order's own threads, or those of its only lot; lots with threads of their own are planned one by one.</summary>
    internal static IReadOnlyList<TicketThread> ThreadsOf(Ticket ticket) =>
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
