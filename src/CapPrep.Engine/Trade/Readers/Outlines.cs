using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using NetTopologySuite.Geometries;

namespace CapPrep.Engine.Trade.Readers;

internal static class Outlines
{
    private static readonly GeometryFactory Geometry = new();

    /// <summary>A simple polygon of 3 to 200 points; a last point equal to the first is dropped.</summary>
    internal static IReadOnlyList<PointMm> Outline(this ObjectReader reader, string name)
    {
        var points = Open(reader.Points(name, 3, 200));
        if (points.Count > 0 && !IsSimple(points))
            reader.Contradicts(name, "The outline crosses or touches itself, or has no area.");
        return points;
    }

    private static IReadOnlyList<PointMm> Open(IReadOnlyList<PointMm> points) =>
        points.Count > 1 && points[0] == points[^1] ? [.. points.SkipLast(1)] : points;

    private static bool IsSimple(IReadOnlyList<PointMm> points) =>
        points.Count >= 3
        && Geometry.CreatePolygon([.. points.Append(points[0]).Select(point => new Coordinate(point.X, point.Y))])
            is { IsValid: true, Area: > 0 };
}
