using CapPrep.Engine.Approvals;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine;

/// <summary>One design for one cap, as accepted: everything that the answer depends on.</summary>
public sealed record PrepareRequest
{
    /// <summary>The tape as read, with at least one penetration.</summary>
    public required Tape Tape { get; init; }

    public required ResolvedTicket Ticket { get; init; }

    public required Setup Setup { get; init; }

    /// <summary>Name of the tape to sew, at most 16 characters: the job number.</summary>
    public required string Label { get; init; }

    /// <summary>These stitches were approved on this style and machine within the last 12 months.</summary>
    public bool SewnBefore { get; init; }

    /// <summary>What people have accepted of these stitches on this cap style, location and technique.</summary>
    public IReadOnlyList<Acceptance> Acceptances { get; init; } = [];

    /// <summary>A cap sewn from these stitches was approved for this cap style, location and technique; null: none was.</summary>
    public Approval? Approval { get; init; }

    /// <summary>The job before this one for the same order, line and location; null: this is the first.</summary>
    public EarlierJob? Earlier { get; init; }
}
