using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>
/// Finds stitches that only hold cloth and backing together under the rest: an open line or zigzag under most of the
/// design. They stay where they are and no order rule counts them (common practice, no source).
/// </summary>
internal static class TackDown
{
    // House: thread per area of its box, share of the design's box, share that is covered later.
    private const double MostThreadPerArea = 1.5;
    private const int BoxPercent = 50;
    private const int CoveredPercent = 60;

    /// <summary>Indices of the elements, sorted.</summary>
    internal static IReadOnlyList<int> Find(DesignReading reading, StitchSequence stitches)
    {
        if (reading.Elements.Count == 0)
            return [];
        var design = Area(reading.Elements.Select(element => element.Box).Aggregate((one, other) => one.Union(other)));
        return [.. reading.Elements
            .Where(element => element.Kind is ElementKind.Running or ElementKind.OpenZigzag or ElementKind.Underlay or ElementKind.Retraced)
            .Where(element => Area(element.Box) * 100 >= design * BoxPercent
                && Length(element, stitches) / 10 <= MostThreadPerArea * Area(element.Box) / 100
                && IsCovered(element, reading.Pieces))
            .Select(element => element.Index)];
    }

    private static long Area(Box box) => (long)box.Width * box.Height;

    private static double Length(Element element, StitchSequence stitches)
    {
        double length = 0;
        for (var i = element.First + 1; i <= element.Last; i++)
        {
            var way = stitches.At(i) - stitches.At(i - 1);
            length += Math.Sqrt(((double)way.X * way.X) + ((double)way.Y * way.Y));
        }

        return length;
    }

    private static bool IsCovered(Element element, IReadOnlyList<Piece> pieces)
    {
        var later = pieces.Where(piece => piece.IsClosed && piece.First > element.Last).Select(piece => piece.Blanket);
        return (long)element.Cover.SharedWithAny(later) * 100 >= (long)element.Cover.Area * CoveredPercent;
    }
}
