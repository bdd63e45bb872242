using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Seating;

/// <summary>What ends the area that may be sewn.</summary>
internal enum Edge
{
    Zone,
    Frame,
    Machine,
}

/// <summary>
/// Where the needle may go on one cap, frame and machine: the zone of the style, the field of the frame and the
/// field of the machine. On a strap the edge toward the brim is left open, because the distance to the brim seam
/// and the strap has a rule of its own.
/// </summary>
internal sealed class SewableArea
{
    private readonly ZoneShape _zone;
    private readonly int _zoneX;
    private readonly int _lowest;

    internal SewableArea(Zone zone, CapFrame frame, Machine machine)
    {
        _zone = new ZoneShape(zone);
        _zoneX = XInFrame(zone);
        FrameField = FieldOf(frame);
        MachineField = FieldOf(machine, FrameField);
        _lowest = frame.Holds == FrameHold.StrapAndPosts
            ? Math.Max(_zone.Bounds.Bottom, FrameField.Bottom)
            : int.MinValue;
    }

    /// <summary>Field of the frame, tape units.</summary>
    internal Box FrameField { get; }

    /// <summary>Field of the machine, tape units: as wide as it says about x = 0, from the bottom of the frame's field up.</summary>
    internal Box MachineField { get; }

    /// <summary>How far a needle point of the zone lies outside, in tape units, and of what; 0 inside and on the edge.</summary>
    internal (double Distance, Edge Of) Outside(TapePoint point)
    {
        var judged = point with { Y = Math.Max(point.Y, _lowest) };
        var inFrame = judged with { X = judged.X + _zoneX };
        (double Distance, Edge Of) worst = (_zone.Distance(judged), Edge.Zone);
        if (DistanceOutside(FrameField, inFrame) is var frame && frame > worst.Distance)
            worst = (frame, Edge.Frame);
        if (DistanceOutside(MachineField, inFrame) is var machine && machine > worst.Distance)
            worst = (machine, Edge.Machine);
        return worst;
    }

    /// <summary>No point of a box of the zone lies outside.</summary>
    internal bool Holds(Box box)
    {
        var judged = box with { Bottom = Math.Max(box.Bottom, _lowest), Top = Math.Max(box.Top, _lowest) };
        return _zone.Holds(judged)
            && Outside(new(judged.Left, judged.Bottom)).Distance == 0
            && Outside(new(judged.Right, judged.Top)).Distance == 0;
    }

    /// <summary>x of the zone's origin in the frame, tape units; frame and machine are centered on a zone off the front.</summary>
    internal static int XInFrame(Zone zone) => Tenths.FromMillimeters(zone.OriginXMm ?? 0).Value;

    /// <summary>Distance of a point from a box along the axis where it is farther out; 0 inside.</summary>
    internal static int DistanceOutside(Box box, TapePoint point) => Math.Max(
        Math.Max(box.Left - point.X, point.X - box.Right),
        Math.Max(0, Math.Max(box.Bottom - point.Y, point.Y - box.Top)));

    internal static Box FieldOf(CapFrame frame) => new(
        Tenths.FromMillimeters(frame.FieldMm.Left).Value,
        Tenths.FromMillimeters(frame.FieldMm.Bottom).Value,
        Tenths.FromMillimeters(frame.FieldMm.Right).Value,
        Tenths.FromMillimeters(frame.FieldMm.Top).Value);

    /// <summary>Where the needle may pass without sewing: on a strap, down to its upper edge.</summary>
    internal static Box TravelFieldOf(CapFrame frame)
    {
        var field = FieldOf(frame);
        return frame.Holds == FrameHold.StrapAndPosts
            ? field with { Bottom = Math.Min(field.Bottom, Tenths.FromMillimeters(frame.StrapTopMm).Value) }
            : field;
    }

    private static Box FieldOf(Machine machine, Box frameField)
    {
        var half = Tenths.FromMillimeters(machine.FieldMm.Width / 2).Value;
        var height = Tenths.FromMillimeters(machine.FieldMm.Height).Value;
        return new Box(-half, frameField.Bottom, half, frameField.Bottom + height);
    }
}
