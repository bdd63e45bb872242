using CapPrep.Engine.Approvals;
using CapPrep.Engine.Briefs;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Desk;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Losses;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Engine.Verdicts;

namespace CapPrep.Engine;

/// <summary>Everything of the catalog that one preparation depends on, at pinned versions.</summary>
public sealed record Setup
{
    /// <summary>Null when the ticket named an article number that no style carries; then nothing that needs a style is judged.</summary>
    public required CapStyle? Style { get; init; }

    /// <summary>With a null style: up to three style ids whose article numbers come nearest, or all ids.</summary>
    public IReadOnlyList<string> StyleSuggestions { get; init; } = [];

    /// <summary>Cap styles of the catalog that an order desk could take instead.</summary>
    public IReadOnlyList<CapStyle> OtherStyles { get; init; } = [];

    public required CapFrame Frame { get; init; }

    public required Machine Machine { get; init; }

    public required FramingStation Station { get; init; }

    public required EffectiveRules Rules { get; init; }

    /// <summary>The front of style and frame as sheets of cloth, from a host that keeps them; null: they are made anew.</summary>
    public FourSheets? Sheets { get; init; }
}

/// <summary>What a shop does with a tape.</summary>
public enum Verdict
{
    SewAsReceived,
    SewResequenced,
    ReturnToDigitizer,
    ReturnToOrderDesk,
}

/// <summary>Why the verdict is what it is: an open hold, or the finding that the new order solves.</summary>
public sealed record VerdictReason(string Rule, int Finding, string Message);

/// <summary>What a production lead may want to do although nothing holds the job.</summary>
public enum Advice
{
    /// <summary>So many warns for the digitizer that another tape may be worth the wait.</summary>
    ConsiderReturn,
}

public enum FirstCapIs
{
    Required,
    Advised,
    No,
}

/// <summary>Whether one cap is sewn and measured before the heads are loaded.</summary>
public sealed record FirstCap(FirstCapIs Is, IReadOnlyList<string> Because);

/// <summary>One sentence per reader, at most 140 characters each; null where a reader has nothing to do.</summary>
public sealed record Summary(string Lead, string? Digitizer, string? Framing, string? Operator, string? OrderDesk);

/// <summary>What the received tape holds.</summary>
/// <param name="Stitches">Needle penetrations.</param>
/// <param name="Jumps">Jump records.</param>
/// <param name="Trims">Cuts between two penetrations (at least the machine's trim count of jumps, no stop inside).</param>
/// <param name="ColorStops">Color stop records.</param>
/// <param name="Blocks">Color blocks that hold at least one penetration.</param>
/// <param name="Strands">Penetrations connected by thread.</param>
/// <param name="Extents">Box of the penetrations, tape units, as stored.</param>
public sealed record TapeFacts(
    int Records,
    int Stitches,
    int Jumps,
    int Trims,
    int ColorStops,
    int Blocks,
    int Strands,
    Box Extents);

/// <summary>What the written tape differs in from the received one.</summary>
public enum TapeChange
{
    Container,
    Label,
    Order,
    Ties,
    Trims,
    StartEnd,
    Turned180,
}

/// <summary>The tape that a machine may run.</summary>
/// <param name="Bytes">The whole file.</param>
/// <param name="StitchesEqual">Every needle point, stop and their order are the received ones.</param>
/// <param name="Changes">Sorted by <see cref="TapeChange"/>.</param>
/// <param name="OriginShift">How far start and end were moved against the design, tape units.</param>
public sealed record TapeToSew(
    byte[] Bytes,
    bool StitchesEqual,
    IReadOnlyList<TapeChange> Changes,
    TapePoint OriginShift);

/// <summary>Order of sewing as counted on a tape.</summary>
/// <param name="TravelMm">Length of all moves with the needle up between two penetrations.</param>
public sealed record OrderFacts(int ColorChanges, int Trims, double TravelMm);

/// <summary>Which thread sews when, in the order of the tape to sew.</summary>
/// <param name="Step">From 1.</param>
/// <param name="Block">Received color block, counted from 1.</param>
/// <param name="Needle">Needle whose thread fits, or null: to be threaded.</param>
/// <param name="Thread">The ticket's thread, or null: numbered gray step.</param>
/// <param name="Stitches">Penetrations of this step.</param>
/// <param name="Action">What a person does at the stop before it.</param>
public sealed record NeedleStep(
    int Step,
    int Block,
    int? Needle,
    TicketThread? Thread,
    int Stitches,
    StopAction Action)
{
    /// <summary>Indices of the elements it sews, in the order it sews them; empty where no order was worked out.</summary>
    public IReadOnlyList<int> Elements { get; init; } = [];

    /// <summary>The thread was on before.</summary>
    public bool Returns { get; init; }
}

/// <summary>Everything that is known about one design on one cap, frame and machine.</summary>
public sealed record Preparation
{
    public required Verdict Verdict { get; init; }

    public required IReadOnlyList<VerdictReason> VerdictReasons { get; init; }

    /// <summary>Everybody who must act, in the order of <see cref="Actor"/>.</summary>
    public required IReadOnlyList<Actor> Actors { get; init; }

    public required Summary Summary { get; init; }

    public required FirstCap FirstCap { get; init; }

    /// <summary>Null for most.</summary>
    public Advice? Advice { get; init; }

    /// <summary>What the digitizer is asked to change; null when nothing that is open asks for anything.</summary>
    public Brief? Brief { get; init; }

    /// <summary>What the order desk can do; null unless the size holds the job.</summary>
    public WaysOut? WaysOut { get; init; }

    /// <summary>Pieces whose reading hangs on a narrow choice, in received order.</summary>
    public IReadOnlyList<DoubtfulPiece> Doubtful { get; init; } = [];

    public required Tape Tape { get; init; }

    public required TapeFacts Facts { get; init; }

    public required ResolvedTicket Ticket { get; init; }

    public required Setup Setup { get; init; }

    /// <summary>Null when the style is unknown or has no zone at the ticket's location: then nothing was seated.</summary>
    public required SeatedDesign? Seating { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>What people have accepted: it stands in no other list and counts for nothing.</summary>
    public IReadOnlyList<AcceptedFinding> Accepted { get; init; } = [];

    /// <summary>The approval whose order is kept; null: none is.</summary>
    public Approval? Approval { get; init; }

    /// <summary>What became of the job before; null: this is the first of its order, line and location.</summary>
    public RevisionReport? Revision { get; init; }

    /// <summary>Pieces and elements of the received tape.</summary>
    public required DesignReading Reading { get; init; }

    /// <summary>Lines of letters of the received tape, from the lowest up; none for a design that lies on no cap.</summary>
    public IReadOnlyList<TextLine> TextLines { get; init; } = [];

    public required OrderFacts ReceivedOrder { get; init; }

    /// <summary>Received and proposed sew order; null for a design that lies on no cap or could only be read coarsely.</summary>
    public SewOrder? Order { get; init; }

    /// <summary>What the sheet model says of both orders; null where it says nothing.</summary>
    public ShiftReport? Shift { get; init; }

    /// <summary>How often the proposed tape was read and ordered again.</summary>
    public int SettledRounds { get; init; }

    /// <summary>False: a further round would change the order again, or was not made since there are very many elements.</summary>
    public bool IsSettled { get; init; } = true;

    /// <summary>Of the tape to sew, else of the proposed tape; null when nothing was written.</summary>
    public LossCheckResult? LossCheck { get; init; }

    /// <summary>The tape in the proposed order, also when it is not sewn; null when no other order is proposed.</summary>
    public byte[]? ProposedTape { get; init; }

    /// <summary>Null with a return verdict: nobody may load a tape that must not sew.</summary>
    public required TapeToSew? TapeToSew { get; init; }

    public required IReadOnlyList<NeedleStep> NeedlePlan { get; init; }
}
