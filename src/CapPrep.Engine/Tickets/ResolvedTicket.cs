namespace CapPrep.Engine.Tickets;

/// <summary>
/// A ticket with every default filled in: the shop's machine, station and rule book, the machine's first frame,
/// and the constants of the contract. Written once at acceptance and pinned with the job.
/// </summary>
public sealed record ResolvedTicket
{
    /// <summary>The ticket as received.</summary>
    public required Ticket Received { get; init; }

    public required string Line { get; init; }

    public required CapLocation Location { get; init; }

    /// <summary>Printed name: the ticket's, else the file's without extension, else the order number.</summary>
    public required string Design { get; init; }

    /// <summary>Null when the ticket named an article number that no style carries.</summary>
    public required string? CapStyle { get; init; }

    public required string Machine { get; init; }

    public required string CapFrame { get; init; }

    public required string FramingStation { get; init; }

    public required string RuleBook { get; init; }

    public required SeatingBase SeatBy { get; init; }

    public required SeatingCenter CenterBy { get; init; }

    /// <summary>x of the tape, in mm, that comes onto the seam; used with <see cref="SeatingCenter.X"/>.</summary>
    public required double CenterXMm { get; init; }

    /// <summary>Null: the nominal clearance of the style's zone.</summary>
    public required double? BaseAboveBrimMm { get; init; }

    /// <summary>Viewer's right positive, mm.</summary>
    public required double OffsetRightMm { get; init; }

    public required Technique Technique { get; init; }

    public required TapeOrientation TapeIs { get; init; }

    public required SewOrderMode SewOrderMode { get; init; }

    public required int AllowExtraColorChanges { get; init; }

    public required InspectionPlan Inspection { get; init; }

    /// <summary>Weight number used where a thread names none.</summary>
    public required int ThreadWeightWt { get; init; }

    /// <summary>JSON pointers of the members that were filled in, sorted.</summary>
    public required IReadOnlyList<string> Defaulted { get; init; }
}

/// <summary>What a shop fills in where a ticket is silent.</summary>
/// <param name="ThreadWeightWt">20 to 100.</param>
public sealed record ShopDefaults(string Machine, string FramingStation, string RuleBook, int ThreadWeightWt);
