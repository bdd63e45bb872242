using CapPrep.Engine.Checks.OnTicket.Colors;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>What the ticket says, against itself, the tape and the catalog.</summary>
internal static class TicketChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        Threads.Named,
        Threads.Needles,
        ExpectedSize.Check,
        Contrast.Check,
        Contradictions.Style,
        Contradictions.Machine,
        Contradictions.Quantity,
        Contradictions.Location,
        TechniqueSaid.Check,
    ];
}
