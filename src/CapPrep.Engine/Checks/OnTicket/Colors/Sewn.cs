using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTicket.Colors;

/// <summary>One list of threads with one color of caps that it is sewn on.</summary>
/// <param name="List">The threads.</param>
/// <param name="CapColor">As <c>#RRGGBB</c>; null when neither the ticket nor the style gives one.</param>
/// <param name="CapName">What people call it, with a space before; empty when it has no name.</param>
internal sealed record Sewn(ThreadList List, string? CapColor, string CapName)
{
    /// <summary>Every list of the ticket on every color of caps.</summary>
    internal static IEnumerable<Sewn> Of(Ticket ticket, CapStyle? style)
    {
        var own = new ThreadList("/threads", ticket.Threads ?? []);
        var lots = ticket.CapLots ?? [];
        return lots.Count == 0
            ? [On(own, ticket.CapColor, style)]
            : lots.Select((lot, i) => On(ListOf(lot, i, own), lot.CapColor ?? ticket.CapColor, style)).Distinct();
    }

    private static ThreadList ListOf(CapLot lot, int index, ThreadList own) =>
        lot.Threads.Count == 0 ? own : new($"/capLots/{Figure.Plain(index, 0)}/threads", lot.Threads);

    private static Sewn On(ThreadList list, NamedColor? cap, CapStyle? style) =>
        new(list, cap?.Color ?? ColorNamed(cap?.Name, style), cap?.Name is { } name ? $" {name}" : "");

    private static string? ColorNamed(string? name, CapStyle? style) => name is null ? null : style?.CapColors
        .FirstOrDefault(color => string.Equals(color.Name, name, StringComparison.OrdinalIgnoreCase))?.Color;
}
