using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Seating;

/// <summary>
/// The highest top edge a zone takes, by the distance from its middle: linear between the points of the zone's
/// top line, constant past the last one, the same on both sides.
/// </summary>
internal sealed class TopLine
{
    private readonly double[] _x;
    private readonly double[] _top;

    private TopLine(IReadOnlyList<TopLinePoint> points, Func<TopLinePoint, double> top)
    {
        var ordered = points.OrderBy(point => point.XMm).ToArray();
        _x = [.. ordered.Select(point => point.XMm)];
        _top = [.. ordered.Select(top)];
    }

    /// <summary>Height above the brim seam in mm at <paramref name="x"/> tape units from the middle.</summary>
    internal double At(double x)
    {
        var mm = Math.Abs(x) / Tenths.PerMillimeter;
        if (mm <= _x[0])
            return _top[0];
        for (var i = 1; i < _x.Length; i++)
        {
            if (mm <= _x[i])
                return _top[i - 1] + ((_top[i] - _top[i - 1]) * (mm - _x[i - 1]) / (_x[i] - _x[i - 1]));
        }

        return _top[^1];
    }

    /// <summary>Null: the zone has no top line.</summary>
    internal static TopLine? Warn(Zone zone) => Of(zone, point => point.WarnMm);

    /// <summary>Null: the zone has no top line.</summary>
    internal static TopLine? Hold(Zone zone) => Of(zone, point => point.HoldMm);

    private static TopLine? Of(Zone zone, Func<TopLinePoint, double> top) =>
        zone.TopLine.Count == 0 ? null : new TopLine(zone.TopLine, top);
}
