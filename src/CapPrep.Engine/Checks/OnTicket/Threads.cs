using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>Threads of the ticket against the color blocks of the tape and the needles of the machine.</summary>
internal static class Threads
{
    internal static readonly Check Named = Check.Telling("ticket.threads", Needs.TapeAndTicket, FindUnnamed);

    /// <summary>
    /// Without a thread list every color block counts as its own thread: nobody can tell which of them are alike.
    /// </summary>
    internal static readonly Check Needles = Check.Telling("ticket.needles", Needs.TapeAndTicket, FindTooMany);

    private static IEnumerable<Occurrence> FindUnnamed(Subject subject, RuleInForce rule)
    {
        var lists = ThreadList.Of(subject.Ticket.Received);
        var blocks = subject.Stitches.Blocks;
        return lists.Count > 0
            ? lists.SelectMany(list => Compare(list, blocks))
            : [new Occurrence(Subject.InTicket("/threads"))
            {
                Measured = 0,
                Level = Severity.Note,
                Text = $"The ticket names no threads; the tape has {Blocks(blocks)}.",
            }];
    }

    private static IEnumerable<Occurrence> Compare(ThreadList list, int blocks)
    {
        if (list.Unnamed(blocks) is { Count: > 0 } unnamed)
            yield return Differs(list, Severity.Hold, $"The tape has {Blocks(blocks)}, the ticket names no thread for {Numbers(unnamed)}.");
        if (list.Surplus(blocks) is { Count: > 0 } surplus)
            yield return Differs(list, Severity.Warn, $"The tape has {Blocks(blocks)}, the ticket names threads for {Numbers(surplus)} too.");
    }

    private static Occurrence Differs(ThreadList list, Severity level, string text) =>
        new(Subject.InTicket(list.Pointer)) { Measured = list.Threads.Count, Level = level, Text = text };

    private static IEnumerable<Occurrence> FindTooMany(Subject subject, RuleInForce rule)
    {
        var (blocks, needles) = (subject.Stitches.Blocks, subject.Setup.Machine.Needles);
        var lists = ThreadList.Of(subject.Ticket.Received);
        return lists.Count == 0
            ? [TooMany("/threads", blocks, $"The ticket names no threads and the tape has {Blocks(blocks)}; the machine has {Figure.Count(needles, "needle")}.")]
            : lists.Select(list => TooMany(list.Pointer, list.Distinct(blocks), $"The design needs {Figure.Count(list.Distinct(blocks), "thread")}; the machine has {Figure.Count(needles, "needle")}."));
    }

    private static Occurrence TooMany(string pointer, int threads, string text) =>
        new(Subject.InTicket(pointer)) { Measured = threads, Text = text };

    private static string Blocks(int blocks) => Figure.Count(blocks, "color block");

    /// <summary>The first few of them in words.</summary>
    private static string Numbers(IReadOnlyList<int> blocks) => blocks.Count > ShownBlocks
        ? $"{Figure.Count(blocks.Count, "block")}"
        : $"block {string.Join(", ", blocks.Select(block => Figure.Plain(block, 0)))}";

    private const int ShownBlocks = 5;
}
