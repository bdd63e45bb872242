using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Engine.Sequence.Writing;

/// <summary>
/// How a tape is sewn in another order, as a list that can be checked against both tapes without knowing how it was
/// found.
/// </summary>
public sealed record SewPlan
{
    /// <summary>Every received penetration once, in received order; an element's number is its place among the elements.</summary>
    public required IReadOnlyList<PlanSpan> Spans { get; init; }

    /// <summary>The elements in the order they are sewn.</summary>
    public required IReadOnlyList<PlanStep> Steps { get; init; }

    /// <summary>Pairs of elements that keep their order.</summary>
    public required IReadOnlyList<(int Before, int After)> MustFollow { get; init; }

    /// <summary>Pairs of one thread that overlap and may change places.</summary>
    public required IReadOnlyList<RelaxedPair> Relaxed { get; init; }

    /// <summary>The color blocks in the order they are sewn.</summary>
    public required IReadOnlyList<PlanBlock> Blocks { get; init; }

    /// <summary>Tie penetrations that are added.</summary>
    public int TiesAdded => Steps.Sum(step => step.TieIn.Count + step.TieOff.Count);
}

/// <summary>Consecutive received penetrations that are sewn together or not at all.</summary>
/// <param name="First">First penetration, from 0.</param>
/// <param name="Last">Last one; first - 1 for a link of a single stitch.</param>
/// <param name="Element">Number of the element; null for a link.</param>
public readonly record struct PlanSpan(int First, int Last, int? Element);

/// <summary>One element and how the thread gets there.</summary>
/// <param name="Element">Number of the element.</param>
/// <param name="Connection">How it is connected to the one sewn before.</param>
/// <param name="TieIn">Penetrations added before its first one.</param>
/// <param name="TieOff">Penetrations added behind its last one.</param>
public sealed record PlanStep(
    int Element,
    Connection Connection,
    IReadOnlyList<TapePoint> TieIn,
    IReadOnlyList<TapePoint> TieOff);

/// <summary>A color block of the written tape.</summary>
/// <param name="Step">Its number there, from 1.</param>
/// <param name="Received">The received block it sews or sews from, from 1; the first of several of one thread.</param>
/// <param name="Thread">Number of its thread; blocks of one thread share it.</param>
/// <param name="Returns">The thread was on before.</param>
/// <param name="Stitches">Penetrations, ties included.</param>
public sealed record PlanBlock(int Step, int Received, int Thread, bool Returns, int Stitches)
{
    /// <summary>Its elements in the order they are sewn.</summary>
    public required IReadOnlyList<int> Elements { get; init; }
}
