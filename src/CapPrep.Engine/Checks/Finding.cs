using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>Which of the two orders a finding belongs to.</summary>
public enum FindingState
{
    /// <summary>Still there on the tape to sew.</summary>
    Open,

    /// <summary>Only in the proposed order.</summary>
    Introduced,

    /// <summary>In the received order, gone in the proposed.</summary>
    Solved,
}

/// <summary>One thing that one rule reports, with all its places.</summary>
public sealed record Finding
{
    /// <summary>From 1, unique in the job, in the order of the list.</summary>
    public required int Number { get; init; }

    public required string Rule { get; init; }

    public required Severity Severity { get; init; }

    public FindingState State { get; init; } = FindingState.Open;

    /// <summary>What is measured in the order of the tape to sew; only for rules about the order.</summary>
    internal Quantity? InNewOrder { get; init; }

    /// <summary>All occurrences, also those not listed.</summary>
    public required int Count { get; init; }

    public required string Message { get; init; }

    /// <summary>The worst one; null where nothing is measured.</summary>
    public Quantity? Measured { get; init; }

    public required AppliedLimit Limit { get; init; }

    /// <summary>
    /// What would no longer warn: the warn limit where a hold was passed, else the limit that was; null where nothing is
    /// measured against a number.
    /// </summary>
    public Quantity? Wanted { get; init; }

    /// <summary>At most 20, the worst, in reading order: bottom to top, then left to right.</summary>
    public required IReadOnlyList<Place> Places { get; init; }

    /// <summary>What an open hold of it asks for.</summary>
    public required Asks Asks { get; init; }

    public RuleRemedy? Remedy { get; init; }
}

/// <param name="Value">Rounded to what the unit is read to: mm 0.01, degrees 0.1, shares 0.0001.</param>
public sealed record Quantity(double Value, string Unit);

/// <summary>The limit that was passed, where its number comes from, and which book set it.</summary>
public sealed record AppliedLimit
{
    public required LimitIs Is { get; init; }

    /// <summary>Null with <see cref="LimitIs.None"/>.</summary>
    public double? Value { get; init; }

    public required string Unit { get; init; }

    public required Severity Level { get; init; }

    public required LimitKind Kind { get; init; }

    /// <summary>The first published row behind it, null for house and common limits.</summary>
    public PublishedSource? Source { get; init; }

    /// <summary>Id and version of the book that set this number.</summary>
    public required VersionedId SetBy { get; init; }
}

/// <summary>A published row of the fact table.</summary>
public sealed record PublishedSource(string Row, string Title, string Publisher, int? Year);

/// <summary>A catalog id at one version.</summary>
public sealed record VersionedId(string Id, int Version);

/// <summary>Which of its three kinds a place is.</summary>
public enum PlaceKind
{
    CapFront,
    Tape,
    Ticket,
}

/// <summary>Where a finding was met: on the cap, in the tape or in the ticket.</summary>
public sealed record Place(PlaceKind At)
{
    /// <summary>Number drawn in the proof; null when not drawn.</summary>
    public int? Mark { get; init; }

    public BoxMm? BoxMm { get; init; }

    public IReadOnlyList<int> Elements { get; init; } = [];

    /// <summary>Received color blocks, counted from 1.</summary>
    public IReadOnlyList<int> Blocks { get; init; } = [];

    /// <summary>First and last penetration in the received tape, counted from 1.</summary>
    public StitchRange? Stitches { get; init; }

    public Quantity? Measured { get; init; }

    public int? Record { get; init; }

    public long? ByteOffset { get; init; }

    /// <summary>JSON pointer into the ticket.</summary>
    public string? Pointer { get; init; }
}

public sealed record StitchRange(int First, int Last);
