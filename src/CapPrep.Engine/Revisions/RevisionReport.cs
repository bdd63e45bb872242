using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Revisions;

/// <summary>What became of the points of the job before, and what else is different.</summary>
public sealed record RevisionReport
{
    /// <summary>Id of the job before.</summary>
    public required string Of { get; init; }

    /// <summary>Both tapes sew the same.</summary>
    public required bool SameStitches { get; init; }

    /// <summary>Points of the job before that are gone.</summary>
    public required IReadOnlyList<RevisedPoint> Solved { get; init; }

    /// <summary>Points that are still there, at the same place.</summary>
    public required IReadOnlyList<RevisedPoint> StillOpen { get; init; }

    /// <summary>Points that were not there before, or not at this place.</summary>
    public required IReadOnlyList<RevisedPoint> New { get; init; }

    /// <summary>What differs although nobody asked for it; at most 50, in the order of the earlier tape.</summary>
    public required IReadOnlyList<OutsideChange> ChangedOutside { get; init; }

    /// <summary>Changes beyond those listed.</summary>
    public required int ChangesLeftOut { get; init; }
}

/// <summary>Places of one finding that share a fate.</summary>
/// <param name="Before">Number of the finding in the job before; null: it is new.</param>
/// <param name="Now">Number of the finding now; null: it is gone.</param>
/// <param name="BoxesMm">On the cap; empty where it lies in the ticket or the tape.</param>
public sealed record RevisedPoint(
    string Rule, Severity Severity, string Message, int? Before, int? Now, IReadOnlyList<BoxMm> BoxesMm);

/// <summary>What is different.</summary>
public enum OutsideKind
{
    /// <summary>Width or height of the design.</summary>
    Size,

    /// <summary>Number of color blocks, or the block that sews an element.</summary>
    Colors,

    /// <summary>The same stitches at another place.</summary>
    Moved,

    /// <summary>Some or all of its stitches.</summary>
    Changed,

    /// <summary>An element is gone.</summary>
    Removed,

    /// <summary>An element was not there before.</summary>
    Added,
}

/// <summary>A change that no point of the brief asked for.</summary>
/// <param name="Element">Number in the earlier tape, of an added one in the new tape, from 1; null: the design.</param>
/// <param name="BoxMm">On the cap now; null where there is none.</param>
/// <param name="Stitches">Penetrations of the earlier tape, of an added element of the new one, from 1.</param>
public sealed record OutsideChange(OutsideKind What, string Message, int? Element = null, BoxMm? BoxMm = null, StitchRange? Stitches = null);
