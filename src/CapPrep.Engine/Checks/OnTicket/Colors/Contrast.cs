using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTicket.Colors;

/// <summary>
/// Threads that hardly show on the cap they are sewn on, and letters that hardly show on the fill under them, by the color
/// difference CIEDE2000. A warn for letters, a note for the rest; silent for colors that the ticket does not give, and
/// altogether where it gives none of the cap.
/// </summary>
internal static class Contrast
{
    internal static readonly Check Check = Check.Telling("ticket.contrast", Needs.TapeAndTicket, Find);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var ground = new ThreadGround(subject);
        return Sewn.Of(subject.Ticket.Received, subject.Setup.Style)
            .SelectMany(sewn => OnCap(sewn, ground).Concat(OnFill(sewn, ground)))
            .Where(pair => rule.Limits.PassedBy(pair.Difference) is not null)
            .Select(pair => new Occurrence(Subject.InTicket(pair.Pointer))
            {
                Measured = pair.Difference,
                Level = pair.IsText ? Severity.Warn : Severity.Note,
                Text = pair.Text,
            });
    }

    private static IEnumerable<Pair> OnCap(Sewn sewn, ThreadGround ground) => sewn.CapColor is not { } cap ? [] : sewn.List.Threads
        .Where(thread => thread.Color is not null && ground.LiesOnCap(thread.Block))
        .Select(thread => new Pair(
            sewn.List.Pointer,
            ColorDifference.Between(thread.Color!, cap),
            ground.IsText(thread.Block),
            $"{Named(thread)} hardly shows on the cap{sewn.CapName}."));

    private static IEnumerable<Pair> OnFill(Sewn sewn, ThreadGround ground) => sewn.CapColor is null ? [] : sewn.List.Threads
        .SelectMany(thread => ground.UnderText(thread.Block).Select(under => (Thread: thread, Under: sewn.List.Threads.FirstOrDefault(other => other.Block == under))))
        .Where(pair => pair.Thread.Color is not null && pair.Under?.Color is not null)
        .Select(pair => new Pair(
            sewn.List.Pointer,
            ColorDifference.Between(pair.Thread.Color!, pair.Under!.Color!),
            IsText: true,
            $"{Named(pair.Thread)} hardly shows on {Named(pair.Under!)} under it."));

    private static string Named(TicketThread thread) =>
        thread.Name is { } name ? $"{name} (block {Figure.Plain(thread.Block, 0)})" : $"The thread of block {Figure.Plain(thread.Block, 0)}";

    private sealed record Pair(string Pointer, double Difference, bool IsText, string Text);
}
