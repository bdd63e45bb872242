using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Seating;

/// <summary>Puts a design on the cap by its needle points; the tape's origin counts only where the ticket says so.</summary>
internal static class Seater
{
    /// <summary>Null when the style is unknown or has no zone at the ticket's location.</summary>
    internal static SeatedDesign? Seat(StitchSequence stitches, ResolvedTicket ticket, Setup setup)
    {
        if (setup.Style?.ZoneOf(ticket.Location) is not { } zone)
            return null;
        var placed = Place(stitches, ticket, zone);
        var points = CapPoints.Of(stitches, placed);
        return placed with
        {
            ClearancesMm = Room.Around(points, placed.Box, zone),
            LargestScale = new LargestFit(points, placed, TallestMm(zone, setup), Tenths.FromMillimeters(ticket.OffsetRightMm).Value).Scale(),
        };
    }

    private static SeatedDesign Place(StitchSequence stitches, ResolvedTicket ticket, Zone zone)
    {
        var turned = ticket.TapeIs == TapeOrientation.Turned;
        var box = Upright(stitches.Extents(), turned);
        var centered = Upright(LoneSign.WithoutIt(stitches), turned);
        var (used, centerX) = DesignCenter.Of(stitches, centered, ticket);
        var baseY = ticket.SeatBy == SeatingBase.Box ? box.Bottom : 0;
        var offset = new TapePoint(
            Tenths.FromMillimeters(ticket.OffsetRightMm).Value - centerX,
            Tenths.FromMillimeters(ticket.BaseAboveBrimMm ?? zone.BrimClearance.NominalMm).Value - baseY);
        return new SeatedDesign
        {
            Zone = zone,
            By = ticket.SeatBy,
            CenterBy = used,
            Offset = offset,
            TapeIsTurned = turned,
            Box = box.Shift(offset.X, offset.Y),
            CenteredBox = centered.Shift(offset.X, offset.Y),
            Origin = offset,
            KeyIn = KeyInFor(offset, box.Shift(offset.X, offset.Y)),
            ClearancesMm = new Clearances(0, 0, 0, 0),
            LargestScale = 1,
        };
    }

    private static Box Upright(Box onTape, bool turned) => turned ? onTape.UpsideDown() : onTape;

    /// <summary>The way from the center mark at the height of the design's base to a start point on the cap.</summary>
    internal static TapePoint KeyInFor(TapePoint start, Box onCap) => start - new TapePoint(0, onCap.Bottom);

    private static double TallestMm(Zone zone, Setup setup) => setup.Rules
        .Find("place.too-tall")?
        .LimitFor(Severity.Warn, zone, setup.Frame, setup.Machine)?.Value ?? zone.Height.WarnAboveMm;
}
