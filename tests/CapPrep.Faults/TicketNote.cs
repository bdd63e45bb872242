namespace CapPrep.FaultCorpus;

/// <summary>What the order says; a runner makes its own ticket of it.</summary>
public sealed record TicketNote
{
    /// <summary>Id of the cap style in the starter catalog.</summary>
    public string Style { get; init; } = "six-panel-structured-mid";

    /// <summary>An article number instead of the style.</summary>
    public string? Sku { get; init; }

    public string Location { get; init; } = "front";

    public string? Technique { get; init; }

    public string Machine { get; init; } = "eight-head";

    public string CapFrame { get; init; } = "wide-270";

    public int Quantity { get; init; } = 48;

    public string TapeIs { get; init; } = "upright";

    /// <summary>One for every block of the tape, in its order; empty: none given.</summary>
    public IReadOnlyList<ThreadNote> Threads { get; init; } = [];

    public bool NamesThreads { get; init; } = true;

    /// <summary>Height of the lowest needle point over the brim seam, mm.</summary>
    public double BaseAboveBrimMm { get; init; } = 13;

    /// <summary><c>box</c>, <c>origin</c> or <c>x</c>.</summary>
    public string CenterBy { get; init; } = "box";

    /// <summary>x of the tape that comes onto the seam, mm; with <c>x</c>.</summary>
    public double CenterXMm { get; init; }

    public double? OffsetRightMm { get; init; }

    public double? ExpectedWidthMm { get; init; }

    public double? ExpectedHeightMm { get; init; }

    /// <summary><c>#RRGGBB</c>.</summary>
    public string? CapColor { get; init; }

    /// <summary>Jumps that cut the thread on this machine.</summary>
    public int TrimJumps { get; init; } = 3;

    public bool MachineTies { get; init; }
}

/// <summary>The thread of one block, as the order names it.</summary>
public sealed record ThreadNote(int Block, string Name, string Color)
{
    public int? WeightWt { get; init; }

    public string? Kind { get; init; }

    public bool Foam { get; init; }

    public string? Action { get; init; }
}
