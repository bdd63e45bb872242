using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Intake;

/// <summary>A tape and a ticket that somebody wants prepared, through whichever door.</summary>
internal sealed record Submission
{
    /// <summary>Id the job gets if it is made; given by the caller, who may wait under it.</summary>
    public required string JobId { get; init; }

    public required Door Door { get; init; }

    /// <summary>JSON, unread.</summary>
    public required byte[] Ticket { get; init; }

    public required byte[] Tape { get; init; }

    public string? FileName { get; init; }

    /// <summary>Key under which a repetition gets the same job; null: every submission is a job.</summary>
    public string? IdempotencyKey { get; init; }

    /// <summary>Method and address that took the key.</summary>
    public string Route { get; init; } = "";

    public string? DropId { get; init; }

    public string? RecheckOf { get; init; }
}

/// <summary>What became of a submission.</summary>
/// <param name="JobId">The job, new or from before; null: refused.</param>
/// <param name="Replayed">The job was there already, made by the same request.</param>
internal sealed record Acceptance(string? JobId, bool Replayed, Refusal? Refusal)
{
    public static Acceptance Refused(Refusal refusal) => new(null, false, refusal);
}
