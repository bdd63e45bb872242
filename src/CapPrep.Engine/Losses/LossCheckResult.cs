using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Losses;

/// <summary>What must be true of a written tape so that nothing of the received one is lost, added or hidden.</summary>
public enum LossClause
{
    /// <summary>The spans of the plan are disjoint and hold every received penetration.</summary>
    Partition,

    /// <summary>The tape is, penetration by penetration, what the plan says.</summary>
    Sequence,

    /// <summary>Every received penetration is sewn with its own thread.</summary>
    Threads,

    /// <summary>Penetrations: the received ones, less the dropped ways, plus the ties.</summary>
    Penetrations,

    /// <summary>Stitches: the received ones, less the cut links, plus new links and ties.</summary>
    Stitches,

    /// <summary>Ties are short and lie inside their element.</summary>
    Ties,

    /// <summary>What lies on top of what is as received.</summary>
    TopView,

    /// <summary>Elements that must follow others do.</summary>
    MustFollow,

    /// <summary>Plan, needle plan and header announce what the bytes hold.</summary>
    Counts,

    /// <summary>The machine can run it: moves, stitch lengths, field, start and end.</summary>
    Machine,
}

/// <summary>One clause of the check.</summary>
/// <param name="Count">How many things were compared.</param>
/// <param name="Fault">The first thing that is wrong; null when it passed.</param>
public sealed record ClauseResult(LossClause Clause, int Count, string? Fault)
{
    public bool Passed => Fault is null;
}

/// <summary>The proof that a written tape sews what was received.</summary>
public sealed record LossCheckResult
{
    /// <summary>All ten, in the order of <see cref="LossClause"/>.</summary>
    public required IReadOnlyList<ClauseResult> Clauses { get; init; }

    /// <summary>Penetrations added as ties.</summary>
    public required int TiesAdded { get; init; }

    /// <summary>Penetrations of cut links, which are not sewn any more.</summary>
    public required int Dropped { get; init; }

    /// <summary>Stitches added between elements that were not connected before.</summary>
    public required int NewLinks { get; init; }

    /// <summary>How far start and end were moved against the design, tape units.</summary>
    public required TapePoint OriginShift { get; init; }

    public required bool Turned180 { get; init; }

    public bool Passed => Clauses.All(clause => clause.Passed);
}
