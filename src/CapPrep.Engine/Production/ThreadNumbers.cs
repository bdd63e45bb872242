using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Production;

/// <summary>Numbers the threads of color blocks: blocks of one thread share a number.</summary>
internal static class ThreadNumbers
{
    /// <summary>One number per received block; null when the ticket names no threads.</summary>
    /// <param name="threads">The ticket's threads.</param>
    /// <param name="blocks">Received color blocks.</param>
    internal static IReadOnlyList<int>? Of(IReadOnlyList<TicketThread> threads, int blocks)
    {
        if (threads.Count == 0)
            return null;
        var numbers = new int[blocks];
        var known = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        for (var block = 1; block <= blocks; block++)
        {
            var thread = threads.FirstOrDefault(thread => thread.Block == block);
            if (thread is null || NameOf(thread) is not { } name)
                numbers[block - 1] = block;
            else if (known.TryAdd(name, block))
                numbers[block - 1] = block;
            else
                numbers[block - 1] = known[name];
        }

        return numbers;
    }

    private static string? NameOf(TicketThread thread) =>
        thread.Code is { } code ? $"code {code}"
        : thread.Name is { } name ? $"name {name}"
        : thread.Color is { } color ? $"color {color}"
        : null;
}
