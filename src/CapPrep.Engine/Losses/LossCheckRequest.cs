using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>Everything the check may know: two tapes, and how the one was meant to be made of the other.</summary>
public sealed record LossCheckRequest
{
    public required Tape Received { get; init; }

    /// <summary>The whole written file.</summary>
    public required byte[] Written { get; init; }

    /// <summary>Null: the received order and joints are kept.</summary>
    public SewPlan? Plan { get; init; }

    /// <summary>How the tape was to be written.</summary>
    public required RepairSettings Settings { get; init; }

    /// <summary>A number for the thread of each received block; null: every block has its own.</summary>
    public IReadOnlyList<int>? ThreadOfBlock { get; init; }

    /// <summary>The needle that holds the thread of each received block; null where none does or none is named.</summary>
    public required IReadOnlyList<int?> NeedleOfBlock { get; init; }

    /// <summary>The plan that goes with the written tape.</summary>
    public required IReadOnlyList<NeedleStep> NeedlePlan { get; init; }

    /// <summary>The machine ties in and off by itself.</summary>
    public bool MachineTies { get; init; }

    /// <summary>Where the needle may travel, in units of the received tape; null: not known.</summary>
    public Box? Field { get; init; }
}
