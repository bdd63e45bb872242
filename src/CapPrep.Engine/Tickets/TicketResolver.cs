namespace CapPrep.Engine.Tickets;

/// <summary>Fills in what a ticket leaves open.</summary>
public static class TicketResolver
{
    /// <param name="ticket">As read.</param>
    /// <param name="shop">The shop's own defaults.</param>
    /// <param name="capStyle">
    /// The style found for the ticket's article number; null when no style carries it. Not looked at when the
    /// ticket names a style itself.
    /// </param>
    /// <param name="defaultCapFrame">The machine's first frame.</param>
    /// <param name="fileName">Name the tape came under, or null; gives the design's name where the ticket has none.</param>
    public static ResolvedTicket Resolve(
        Ticket ticket, ShopDefaults shop, string? capStyle, string defaultCapFrame, string? fileName) => new()
        {
            Received = ticket,
            Line = ticket.Line ?? "1",
            Location = ticket.Location ?? CapLocation.Front,
            Design = ticket.Design ?? DesignName.Of(fileName) ?? ticket.OrderNumber,
            CapStyle = ticket.CapStyle ?? capStyle,
            Machine = ticket.Machine ?? shop.Machine,
            CapFrame = ticket.CapFrame ?? defaultCapFrame,
            FramingStation = ticket.FramingStation ?? shop.FramingStation,
            RuleBook = ticket.RuleBook ?? shop.RuleBook,
            SeatBy = ticket.Seating?.By ?? SeatingBase.Box,
            CenterBy = ticket.Seating?.CenterBy ?? SeatingCenter.Box,
            CenterXMm = ticket.Seating?.CenterXMm ?? 0,
            BaseAboveBrimMm = ticket.Seating?.BaseAboveBrimMm,
            OffsetRightMm = ticket.Seating?.OffsetRightMm ?? 0,
            Technique = ticket.Technique ?? Technique.Flat,
            TapeIs = ticket.TapeIs ?? TapeOrientation.Upright,
            SewOrderMode = ticket.SewOrder?.Mode ?? SewOrderMode.IfBetter,
            AllowExtraColorChanges = ticket.SewOrder?.AllowExtraColorChanges ?? 0,
            Inspection = ticket.Inspection ?? InspectionPlan.Loads,
            ThreadWeightWt = shop.ThreadWeightWt,
            Defaulted = Defaults.OpenIn(ticket, styleFound: capStyle is not null),
        };
}
