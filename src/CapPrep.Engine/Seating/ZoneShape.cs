using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;

namespace CapPrep.Engine.Seating;

/// <summary>The outline of a zone in tape units.</summary>
internal sealed class ZoneShape
{
    private readonly TapePoint[] _corners;
    private readonly Polygon _polygon;
    private readonly IndexedPointInAreaLocator _locator;

    internal ZoneShape(Zone zone)
    {
        _corners = [.. zone.OutlineMm.Select(Corner)];
        Bounds = _corners.Select(Box.Of).Aggregate((all, next) => all.Union(next));
        var ring = _corners.Append(_corners[0]).Select(corner => new Coordinate(corner.X, corner.Y));
        _polygon = new GeometryFactory().CreatePolygon([.. ring]);
        _locator = new IndexedPointInAreaLocator(_polygon);
    }

    internal Box Bounds { get; }

    /// <summary>True on the outline too.</summary>
    internal bool Contains(TapePoint point) =>
        Bounds.Contains(point) && _locator.Locate(new Coordinate(point.X, point.Y)) != Location.Exterior;

    /// <summary>All of a box lies in the zone or on its outline.</summary>
    internal bool Holds(Box box) => _polygon.Covers(_polygon.Factory.ToGeometry(new Envelope(box.Left, box.Right, box.Bottom, box.Top)));

    /// <summary>Distance of a point from the zone in tape units, 0 inside.</summary>
    internal double Distance(TapePoint point) =>
        Contains(point) ? 0 : _polygon.Distance(_polygon.Factory.CreatePoint(new Coordinate(point.X, point.Y)));

    /// <summary>Innermost left and right edge of the zone anywhere between two heights, in tape units.</summary>
    internal (double Left, double Right) EdgesBetween(int bottom, int top)
    {
        var heights = _corners.Select(corner => corner.Y).Where(y => y > bottom && y < top).Append(bottom).Append(top);
        var edges = heights.Select(EdgesAt).ToArray();
        return (edges.Max(edge => edge.Left), edges.Min(edge => edge.Right));
    }

    private (double Left, double Right) EdgesAt(int height)
    {
        var y = Math.Clamp(height, Bounds.Bottom, Bounds.Top);
        var crossings = _corners
            .Zip(_corners.Skip(1).Append(_corners[0]))
            .Where(side => Math.Min(side.First.Y, side.Second.Y) <= y && Math.Max(side.First.Y, side.Second.Y) >= y)
            .SelectMany(side => CrossingsOf(side.First, side.Second, y))
            .ToArray();
        return (crossings.Min(), crossings.Max());
    }

    private static double[] CrossingsOf(TapePoint a, TapePoint b, int y) =>
        a.Y == b.Y ? [a.X, b.X] : [a.X + ((double)(b.X - a.X) * (y - a.Y) / (b.Y - a.Y))];

    private static TapePoint Corner(PointMm point) =>
        new(Tenths.FromMillimeters(point.X).Value, Tenths.FromMillimeters(point.Y).Value);
}
