using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Briefs;

/// <summary>
/// What a digitizer is asked to change on one design, and what must stay as it is. Sentences have at most 15 words,
/// since they are read abroad.
/// </summary>
public sealed record Brief
{
    public required BriefCap Cap { get; init; }

    public required BriefKeep Keep { get; init; }

    /// <summary>At most ten: what must change first, then what should; worst first.</summary>
    public required IReadOnlyList<BriefPoint> Points { get; init; }

    /// <summary>Further points that are not listed.</summary>
    public required int LeftOut { get; init; }

    /// <summary>How the design should be sewn, from the first step; empty where no order could be worked out.</summary>
    public required IReadOnlyList<BriefStep> WantedOrder { get; init; }

    public required BriefBudget Budget { get; init; }

    /// <summary>How the new tape must be made and sent, one sentence each.</summary>
    public required IReadOnlyList<string> SendBack { get; init; }
}

/// <summary>The cap in one line.</summary>
/// <param name="Style">Name of the cap style; null when the article is unknown.</param>
/// <param name="ZoneWidthMm">Width above which the style warns; null when the design lies on no cap.</param>
/// <param name="ZoneHeightMm">Height above which it warns.</param>
/// <param name="Held">How the cap is held while it is sewn, in words.</param>
public sealed record BriefCap(
    string? Style,
    bool HasCenterSeam,
    CrownStructure? Structure,
    CapLocation Location,
    double? ZoneWidthMm,
    double? ZoneHeightMm,
    double? BaseAboveBrimMm,
    Technique Technique,
    int ThreadWeightWt,
    string Held);

/// <summary>What may not change.</summary>
/// <param name="SizeMayChangeBy">Numbers of the points that ask for another size; empty: the size stays.</param>
/// <param name="Threads">In the order of the received blocks; empty when the ticket names none.</param>
public sealed record BriefKeep(
    double WidthMm,
    double HeightMm,
    IReadOnlyList<int> SizeMayChangeBy,
    int Colors,
    IReadOnlyList<TicketThread> Threads);

/// <summary>One thing to change.</summary>
public sealed record BriefPoint
{
    /// <summary>From 1, in the order of the list.</summary>
    public required int Number { get; init; }

    /// <summary>Number of the finding it comes from.</summary>
    public required int Finding { get; init; }

    public required string Rule { get; init; }

    /// <summary>True: the design is not sewn before this is done.</summary>
    public required bool MustChange { get; init; }

    /// <summary>At most five, the worst, in reading order.</summary>
    public required IReadOnlyList<BriefPlace> Places { get; init; }

    /// <summary>All places of the finding.</summary>
    public required int Count { get; init; }

    public required string Message { get; init; }

    public Quantity? Measured { get; init; }

    public BriefLimit? Wanted { get; init; }

    public required string Why { get; init; }

    public required string How { get; init; }
}

/// <summary>What a measured value should be.</summary>
public sealed record BriefLimit(LimitIs Is, double Value, string Unit);

/// <summary>Where something is to be changed, as the digitizer finds it.</summary>
/// <param name="Mark">Number in the proof; null when it is not drawn.</param>
/// <param name="Words">Way from the seam and from the design's base.</param>
/// <param name="Blocks">Color blocks of the digitizer's own tape, from 1.</param>
/// <param name="Stitches">Penetrations of the digitizer's own tape, from 1.</param>
public sealed record BriefPlace(
    int? Mark, string Words, BoxMm? BoxMm, IReadOnlyList<int> Blocks, StitchRange? Stitches, Quantity? Measured);

/// <summary>What kind of stop lies before a step.</summary>
public enum BriefStop
{
    None,

    /// <summary>Another thread.</summary>
    Color,

    /// <summary>A person lays, places or cuts something.</summary>
    Deliberate,
}

/// <summary>One step of the wanted order.</summary>
/// <param name="Number">From 1.</param>
/// <param name="What">In words of the trade.</param>
/// <param name="Elements">Numbers of the elements, from 1, in the order they are sewn.</param>
/// <param name="Block">Received color block, from 1.</param>
/// <param name="Letters">For a text line: where each letter is entered, from the viewer's left.</param>
public sealed record BriefStep(
    int Number,
    string What,
    IReadOnlyList<int> Elements,
    int Block,
    BoxMm BoxMm,
    BriefStop StopBefore,
    StopAction Action,
    IReadOnlyList<LetterEntry> Letters);

/// <summary>On which side a letter is entered, so that its thread pulls away from the seam.</summary>
public enum LetterEntry
{
    Left,
    Right,

    /// <summary>It stands on the seam: either side.</summary>
    Either,
}

/// <summary>What the new tape may not exceed.</summary>
public sealed record BriefBudget(int Stitches, int Trims, int ColorChanges);
