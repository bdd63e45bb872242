namespace CapPrep.Engine.Tickets;

/// <summary>Where on the cap a design sits. Left and right are the wearer's.</summary>
public enum CapLocation
{
    Front,
    FrontLeft,
    FrontRight,
    Left,
    Right,
    Back,
    Visor,
    Wrap,
}

/// <summary>What the work is made of.</summary>
public enum Technique
{
    Flat,
    Foam,
    PartFoam,
    Applique,
    Patch,
}

/// <summary>What the digitizer already did about the 180 degree turn of a cap frame.</summary>
public enum TapeOrientation
{
    Upright,
    Turned,
}

/// <summary>What a person does at the stop before a block.</summary>
public enum StopAction
{
    None,
    LayFoam,
    PlacePatch,
    TrimFabric,
    Pause,
}

public enum ThreadKind
{
    Polyester,
    Rayon,
    Metallic,
    Matte,
    Cotton,
}

/// <summary>What of the design comes to the base height above the brim seam.</summary>
public enum SeatingBase
{
    Box,
    Origin,
}

/// <summary>What of the design comes onto the center seam.</summary>
public enum SeatingCenter
{
    Box,
    MainText,
    Weight,
    Origin,
    X,
}

public enum SewOrderMode
{
    AsReceived,
    IfBetter,
    Always,
}

public enum InspectionPlan
{
    Loads,
    Aql,
}

/// <summary>
/// The order data that comes with a tape, as the caller wrote it: absent members are null, nothing is defaulted.
/// </summary>
public sealed record Ticket
{
    /// <summary>1 to 64 characters.</summary>
    public required string OrderNumber { get; init; }

    /// <summary>Id of a cap style; exactly one of this and <see cref="CapSku"/> is given.</summary>
    public string? CapStyle { get; init; }

    /// <summary>A supplier's article number, looked up in the styles' own lists; 1 to 60 characters.</summary>
    public string? CapSku { get; init; }

    /// <summary>Caps to sew, 1 to 100,000.</summary>
    public required int Quantity { get; init; }

    /// <summary>1 to 32 characters.</summary>
    public string? Line { get; init; }

    /// <summary>How many (line, location) jobs make the order whole, 1 to 1,000.</summary>
    public int? OrderLines { get; init; }

    /// <summary>Id that chooses overrides of the rule book.</summary>
    public string? Customer { get; init; }

    /// <summary>Printed name of the design, 1 to 120 characters.</summary>
    public string? Design { get; init; }

    public CapLocation? Location { get; init; }

    public string? Machine { get; init; }

    public string? CapFrame { get; init; }

    public string? FramingStation { get; init; }

    public string? RuleBook { get; init; }

    /// <summary>Null also when the caller's object had no members.</summary>
    public TicketSeating? Seating { get; init; }

    public ExpectedSize? ExpectedSize { get; init; }

    /// <summary>1 to 1,000 threads, each of another block.</summary>
    public IReadOnlyList<TicketThread>? Threads { get; init; }

    /// <summary>Null also when the caller's object had no members.</summary>
    public TicketSewOrder? SewOrder { get; init; }

    /// <summary>Printed, not used.</summary>
    public DateOnly? DueDate { get; init; }

    public Technique? Technique { get; init; }

    public TapeOrientation? TapeIs { get; init; }

    public NamedColor? CapColor { get; init; }

    /// <summary>1 to 50 lots whose quantities add up to <see cref="Quantity"/>.</summary>
    public IReadOnlyList<CapLot>? CapLots { get; init; }

    /// <summary>Caps in the box, 1 to 100,000.</summary>
    public int? Blanks { get; init; }

    /// <summary>1 to 60 characters.</summary>
    public string? Digitizer { get; init; }

    public InspectionPlan? Inspection { get; init; }

    /// <summary>SHA-256 of the tape this ticket belongs to, 64 lower-case hex digits.</summary>
    public string? TapeSha256 { get; init; }

    /// <summary>The caller's own JSON, byte for byte as sent; at most 4,096 bytes and 8 levels.</summary>
    public ReadOnlyMemory<byte>? Echo { get; init; }
}

/// <summary>How the caller wants the design seated; lengths in cap-front millimeters.</summary>
public sealed record TicketSeating
{
    public SeatingBase? By { get; init; }

    public SeatingCenter? CenterBy { get; init; }

    /// <summary>With <see cref="SeatingCenter.X"/>: which x of the tape comes onto the seam, -200 to 200 mm.</summary>
    public double? CenterXMm { get; init; }

    /// <summary>Height of the base above the brim seam, 0 to 100 mm.</summary>
    public double? BaseAboveBrimMm { get; init; }

    /// <summary>Wanted offset from the seam, viewer's right positive, -200 to 200 mm.</summary>
    public double? OffsetRightMm { get; init; }
}

/// <summary>Size the caller sold, 1 to 400 mm each, at least one of them; an absent one is not compared.</summary>
public sealed record ExpectedSize(double? WidthMm, double? HeightMm);

/// <summary>The thread of one received color block.</summary>
public sealed record TicketThread
{
    /// <summary>Received color block, 1 to 1,000.</summary>
    public required int Block { get; init; }

    /// <summary>1 to 60 characters.</summary>
    public string? Name { get; init; }

    /// <summary>Color as <c>#RRGGBB</c>, upper case.</summary>
    public string? Color { get; init; }

    /// <summary>1 to 40 characters.</summary>
    public string? Code { get; init; }

    /// <summary>Weight number, 20 to 100 (fact row K11).</summary>
    public int? WeightWt { get; init; }

    public ThreadKind? Kind { get; init; }

    public bool? Foam { get; init; }

    public StopAction? Action { get; init; }
}

/// <summary>What the caller allows the sew order to cost.</summary>
public sealed record TicketSewOrder
{
    public SewOrderMode? Mode { get; init; }

    /// <summary>0 to 20.</summary>
    public int? AllowExtraColorChanges { get; init; }

    /// <summary>0 to 200.</summary>
    public int? AllowExtraTrims { get; init; }

    /// <summary>Minutes the whole order may take longer, 0 to 600.</summary>
    public double? ExtraMinutes { get; init; }
}

/// <summary>A color with the name people use for it; at least one of the two is given.</summary>
/// <param name="Name">1 to 60 characters.</param>
/// <param name="Color"><c>#RRGGBB</c>, upper case.</param>
public sealed record NamedColor(string? Name, string? Color);

/// <summary>Caps of one color and article inside an order.</summary>
public sealed record CapLot
{
    public string? CapSku { get; init; }

    public NamedColor? CapColor { get; init; }

    /// <summary>At most 50; empty when the caller gave none.</summary>
    public IReadOnlyList<LotSize> Sizes { get; init; } = [];

    /// <summary>1 to 100,000.</summary>
    public required int Quantity { get; init; }

    /// <summary>Empty when the lot is sewn with the ticket's threads.</summary>
    public IReadOnlyList<TicketThread> Threads { get; init; } = [];
}

/// <param name="Size">1 to 20 characters.</param>
/// <param name="Quantity">1 to 100,000.</param>
public sealed record LotSize(string Size, int Quantity);
