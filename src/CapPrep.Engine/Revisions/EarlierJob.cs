using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Revisions;

/// <summary>The job before this one for the same order, line and location, as it was answered.</summary>
public sealed record EarlierJob
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The tape received then.</summary>
    public required Tape Tape { get; init; }

    public required ResolvedTicket Ticket { get; init; }

    /// <summary>Box of the design on the cap then; null: it lay on none.</summary>
    public BoxMm? SeatedMm { get; init; }

    /// <summary>What was open then, holds and warns.</summary>
    public required IReadOnlyList<EarlierFinding> Findings { get; init; }
}

/// <summary>A finding of the job before.</summary>
/// <param name="Number">In that job's result.</param>
/// <param name="Count">All occurrences, also those not listed.</param>
/// <param name="Asked">Whom its remedy asks; null: nobody.</param>
public sealed record EarlierFinding(
    int Number, string Rule, Severity Severity, string Message, int Count, Actor? Asked, IReadOnlyList<Place> Places);
