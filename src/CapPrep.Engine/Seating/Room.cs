using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Seating;

/// <summary>How much room a seated design has to the edges of its zone.</summary>
internal static class Room
{
    internal static Clearances Around(CapPoints points, Box box, Zone zone)
    {
        var shape = new ZoneShape(zone);
        var (left, right) = shape.EdgesBetween(box.Bottom, box.Top);
        return new Clearances(
            Brim: Rounded(box.Bottom),
            Top: Rounded(Above(points, box, zone, shape)),
            Left: Rounded(box.Left - left),
            Right: Rounded(right - box.Right));
    }

    private static double Above(CapPoints points, Box box, Zone zone, ZoneShape shape)
    {
        if (TopLine.Hold(zone) is not { } line)
            return shape.Bounds.Top - box.Top;
        var room = double.MaxValue;
        for (var i = 0; i < points.Count; i++)
            room = Math.Min(room, (line.At(points.X[i]) * Tenths.PerMillimeter) - points.Y[i]);
        return room;
    }

    /// <summary>Tape units to mm, to 0.01.</summary>
    private static double Rounded(double units) =>
        Math.Round(units / Tenths.PerMillimeter, 2, MidpointRounding.AwayFromZero);
}
