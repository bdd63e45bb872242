using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade;

public enum Severity
{
    Note,
    Warn,
    Hold,
}

/// <summary>Which side of a limit is the good one.</summary>
public enum LimitIs
{
    AtMost,
    AtLeast,

    /// <summary>The rule has no number to compare; what it finds has the severity of its level.</summary>
    None,
}

/// <summary>Where a limit's number comes from (published: grade A or B source).</summary>
public enum LimitKind
{
    Published,
    Common,
    House,
}

/// <summary>Who has to do something.</summary>
public enum Actor
{
    OrderDesk,
    Digitizer,
    FramingStation,
    Operator,
}

/// <summary>What an open hold asks for.</summary>
public enum Asks
{
    Nothing,
    ReturnToOrderDesk,
    ReturnToDigitizer,
}

/// <summary>One rule of the built-in book, complete.</summary>
public sealed record RuleRow
{
    /// <summary>Id, e.g. <c>place.too-tall</c>.</summary>
    public required string Rule { get; init; }

    public required string Group { get; init; }

    /// <summary>What it means when it fires, one sentence.</summary>
    public required string Says { get; init; }

    public required RuleScope AppliesTo { get; init; }

    /// <summary>What is measured, in words.</summary>
    public required string Measures { get; init; }

    public required string Unit { get; init; }

    public required LimitIs Is { get; init; }

    /// <summary>At most one per severity; a severity without a limit never occurs.</summary>
    public required IReadOnlyList<RuleLimit> Limits { get; init; }

    /// <summary>Further numbers, unit in the name.</summary>
    public required IReadOnlyDictionary<string, double> Parameters { get; init; }

    /// <summary>What a hold of this rule asks for; <see cref="Asks.Nothing"/>: it can never hold.</summary>
    public required Asks HoldAsks { get; init; }

    /// <summary>Null: nobody has to do anything.</summary>
    public RuleRemedy? Remedy { get; init; }

    public required LimitKind Kind { get; init; }

    /// <summary>Row ids of published facts; empty for house and common rules.</summary>
    public required IReadOnlyList<string> Sources { get; init; }

    /// <summary>Its holds may be moved but not below a warn.</summary>
    public bool HoldStaysAtLeastWarn { get; init; }
}

/// <summary>Where a rule speaks at all; an empty list means everywhere.</summary>
public sealed record RuleScope(
    IReadOnlyList<CapLocation> Locations,
    IReadOnlyList<FrameHold> HeldBy,
    IReadOnlyList<Technique> Techniques,
    bool CenterSeamOnly);

/// <summary>
/// A limit of one severity: a number, or a value taken from the catalog at <see cref="Pointer"/> plus
/// <see cref="Plus"/>; neither with a rule that has no number to compare.
/// </summary>
public sealed record RuleLimit(Severity Level)
{
    public double? Value { get; init; }

    /// <summary><c>zone</c>, <c>capFrame</c> or <c>machine</c>.</summary>
    public string? From { get; init; }

    /// <summary>Member path inside it, e.g. <c>height/warnAboveMm</c>.</summary>
    public string? Pointer { get; init; }

    public double Plus { get; init; }
}

/// <param name="Message">May hold <c>{limit}</c> and <c>{unit}</c>.</param>
public sealed record RuleRemedy(Actor Who, string Message);

/// <summary>The built-in book: every rule in full, what costs most first.</summary>
/// <param name="Version">Rises with every release that changes a row.</param>
public sealed record HouseBook(int Version, IReadOnlyList<RuleRow> Rows, OrderSettings SewOrder)
{
    /// <summary>Id of the built-in book.</summary>
    public const string BookId = "house";

    public RuleRow? Find(string rule) => Rows.FirstOrDefault(row => row.Rule == rule);
}

/// <summary>A shop's own book: only what differs from the built-in one.</summary>
public sealed record RuleBook
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public string BasedOn { get; init; } = HouseBook.BookId;

    public OrderSettings? SewOrder { get; init; }

    public IReadOnlyList<RuleChange> Rules { get; init; } = [];

    /// <summary>Applied in this order, each on top of the one before.</summary>
    public IReadOnlyList<RuleOverride> Overrides { get; init; } = [];
}

/// <summary>What re-sequencing may cost, as far as a book sets it.</summary>
public sealed record OrderSettings
{
    public int? ExtraColorChanges { get; init; }

    public int? ExtraTrims { get; init; }

    public bool? StartEndAtBottomCenter { get; init; }

    /// <summary>Share of order cost and trim price, 0 to 1, from which another order is worth a new tape.</summary>
    public double? BetterBy { get; init; }
}

/// <summary>Changes to one rule; a limit that is not listed stays.</summary>
public sealed record RuleChange(string Rule)
{
    /// <summary>At most one per level.</summary>
    public IReadOnlyList<LimitChange> Limits { get; init; } = [];

    /// <summary>True: the rule is switched off; false: on again; null: as it was.</summary>
    public bool? Off { get; init; }
}

/// <param name="Value">The new number; null for a rule that has none.</param>
/// <param name="Off">The level is switched off; then there is no number.</param>
public sealed record LimitChange(Severity Level, double? Value, bool Off);

/// <summary>Changes that apply when every named key matches.</summary>
public sealed record RuleOverride
{
    public string? Customer { get; init; }

    public string? CapStyle { get; init; }

    public CapLocation? Location { get; init; }

    public required IReadOnlyList<RuleChange> Rules { get; init; }

    public string? Because { get; init; }
}
