namespace CapPrep.Engine.Tickets;

/// <summary>The members that resolving fills in: which they are, and a ticket with and without them.</summary>
internal static class Defaults
{
    /// <summary>Pointers of what a ticket leaves open and <see cref="TicketResolver"/> fills in, sorted.</summary>
    internal static IReadOnlyList<string> OpenIn(Ticket ticket, bool styleFound)
    {
        (string Pointer, bool Open)[] members =
        [
            ("/capFrame", ticket.CapFrame is null),
            ("/capStyle", ticket.CapStyle is null && styleFound),
            ("/design", ticket.Design is null),
            ("/framingStation", ticket.FramingStation is null),
            ("/inspection", ticket.Inspection is null),
            ("/line", ticket.Line is null),
            ("/location", ticket.Location is null),
            ("/machine", ticket.Machine is null),
            ("/ruleBook", ticket.RuleBook is null),
            ("/seating/by", ticket.Seating?.By is null),
            ("/seating/centerBy", ticket.Seating?.CenterBy is null),
            ("/seating/offsetRightMm", ticket.Seating?.OffsetRightMm is null),
            ("/sewOrder/allowExtraColorChanges", ticket.SewOrder?.AllowExtraColorChanges is null),
            ("/sewOrder/mode", ticket.SewOrder?.Mode is null),
            ("/tapeIs", ticket.TapeIs is null),
            ("/technique", ticket.Technique is null),
            ("/threadWeightWt", true),
        ];
        return [.. members.Where(member => member.Open).Select(member => member.Pointer)];
    }

    /// <summary>The received ticket with everything open filled in, without the caller's own JSON.</summary>
    internal static Ticket Filled(ResolvedTicket resolved) => resolved.Received with
    {
        CapFrame = resolved.CapFrame,
        CapStyle = resolved.CapStyle,
        Design = resolved.Design,
        FramingStation = resolved.FramingStation,
        Inspection = resolved.Inspection,
        Line = resolved.Line,
        Location = resolved.Location,
        Machine = resolved.Machine,
        RuleBook = resolved.RuleBook,
        Seating = (resolved.Received.Seating ?? new TicketSeating()) with
        {
            By = resolved.SeatBy,
            CenterBy = resolved.CenterBy,
            OffsetRightMm = resolved.OffsetRightMm,
        },
        SewOrder = (resolved.Received.SewOrder ?? new TicketSewOrder()) with
        {
            AllowExtraColorChanges = resolved.AllowExtraColorChanges,
            Mode = resolved.SewOrderMode,
        },
        TapeIs = resolved.TapeIs,
        Technique = resolved.Technique,
        Echo = null,
    };

    /// <summary>The ticket as it was received, before the members at these pointers were filled in.</summary>
    internal static Ticket Emptied(Ticket filled, IReadOnlyList<string> defaulted)
    {
        return filled with
        {
            CapFrame = Kept("/capFrame", filled.CapFrame),
            CapStyle = Kept("/capStyle", filled.CapStyle),
            Design = Kept("/design", filled.Design),
            FramingStation = Kept("/framingStation", filled.FramingStation),
            Inspection = Kept("/inspection", filled.Inspection),
            Line = Kept("/line", filled.Line),
            Location = Kept("/location", filled.Location),
            Machine = Kept("/machine", filled.Machine),
            RuleBook = Kept("/ruleBook", filled.RuleBook),
            Seating = NullIfEmpty((filled.Seating ?? new TicketSeating()) with
            {
                By = Kept("/seating/by", filled.Seating?.By),
                CenterBy = Kept("/seating/centerBy", filled.Seating?.CenterBy),
                OffsetRightMm = Kept("/seating/offsetRightMm", filled.Seating?.OffsetRightMm),
            }),
            SewOrder = NullIfEmpty((filled.SewOrder ?? new TicketSewOrder()) with
            {
                AllowExtraColorChanges = Kept("/sewOrder/allowExtraColorChanges", filled.SewOrder?.AllowExtraColorChanges),
                Mode = Kept("/sewOrder/mode", filled.SewOrder?.Mode),
            }),
            TapeIs = Kept("/tapeIs", filled.TapeIs),
            Technique = Kept("/technique", filled.Technique),
        };

        T? Kept<T>(string pointer, T? value) => defaulted.Contains(pointer) ? default : value;
    }

    private static T? NullIfEmpty<T>(T value)
        where T : class, new() =>
        value.Equals(new T()) ? null : value;
}
