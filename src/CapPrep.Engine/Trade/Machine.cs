namespace CapPrep.Engine.Trade;

/// <summary>How a machine is told to trim.</summary>
public enum TrimBy
{
    /// <summary>A run of jump records (fact row T5, from memory).</summary>
    Jumps,

    /// <summary>Only at a color stop.</summary>
    StopOnly,

    /// <summary>A person cuts.</summary>
    Hand,
}

/// <summary>How jump records of a trim are laid out when the way is short.</summary>
public enum TrimPattern
{
    Spread,
    OutAndBack,
}

/// <summary>Who turns the design by 180 degrees for the cap frame.</summary>
public enum TurnedBy
{
    Machine,
    Tape,
}

/// <summary>What can be moved to correct a cap that hangs off center.</summary>
public enum Nudge
{
    None,
    All,
    PerHead,
}

/// <summary>An embroidery machine as the shop has it.</summary>
public sealed record Machine
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required int Heads { get; init; }

    public required int Needles { get; init; }

    /// <summary>Cap field, centered on x = 0; its height is measured from the frame's own bottom.</summary>
    public required FieldSize FieldMm { get; init; }

    /// <summary>Ids of the frames it takes, first one is the default; never empty.</summary>
    public required IReadOnlyList<string> CapFrames { get; init; }

    public required MachineSpeed Speed { get; init; }

    public required MachineStops Stops { get; init; }

    public required MachineTape Tape { get; init; }

    public required Nudge Nudge { get; init; }

    /// <summary>What is on the needles now.</summary>
    public IReadOnlyList<NeedleThread> Threads { get; init; } = [];

    /// <summary>The machine ties in and off by itself.</summary>
    public bool AddsTies { get; init; }

    /// <summary>True: the cap sits brim up, so viewer's right is toward head 1.</summary>
    public bool BrimUpOnMachine { get; init; } = true;

    public int? MaxStitches { get; init; }

    public int? MaxStops { get; init; }

    /// <summary>Heads that cannot be used today, counted from 1.</summary>
    public IReadOnlyList<int> HeadsOff { get; init; } = [];

    public IReadOnlyList<HeadOffset> HeadOffsets { get; init; } = [];

    public required IReadOnlyDictionary<string, string> Sources { get; init; }
}

public sealed record FieldSize(double Width, double Height);

/// <summary>Stitches per minute.</summary>
public sealed record MachineSpeed(int MaxSpm, int CapSpm);

/// <summary>What interrupts sewing; seconds, and breaks per 100,000 stitches of one head.</summary>
public sealed record MachineStops
{
    public required double TrimSeconds { get; init; }

    public required double ColorChangeSeconds { get; init; }

    public required double BreaksPer100000Stitches { get; init; }

    public required double BreakSeconds { get; init; }

    public double BobbinChangeSeconds { get; init; }

    public double FrameSwapSecondsPerHead { get; init; }

    /// <summary>One exchange of all frames.</summary>
    public double SwapSeconds { get; init; }
}

/// <param name="TrimCount">Jump records that mean a trim; used with <see cref="TrimBy.Jumps"/>.</param>
/// <param name="MaxMoveMm">Longest move of one record, per axis, at most 12.1 mm.</param>
public sealed record MachineTape(
    TrimBy TrimBy,
    int TrimCount,
    TrimPattern TrimPattern,
    double MaxMoveMm,
    TurnedBy Turn180);

public sealed record NeedleThread(int Needle, string? Code, string? Name, string? Color, int? WeightWt);

/// <summary>A learned offset of one head, viewer's right positive, mm.</summary>
public sealed record HeadOffset(int Head, double XMm, double YMm);
