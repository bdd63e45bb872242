using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence.Writing;

/// <summary>
/// Ties the thread where an order cuts it anew: two short stitches back and forth, inside the element's own cover
/// where there is room, else on its own first or last stitch.
/// </summary>
internal sealed class Ties(StitchSequence stitches, Element element)
{
    // House: 0.6 to 0.8 mm long, 0.3 mm inside. Sixteen whole directions of such a length.
    private const int Inside = 3;
    private const int Length = 7;

    // An end is tied when its three stitches are short and stay near.
    private const int ShortStitch = 12;
    private const int Near = 16;
    private const int TieStitches = 3;

    private static readonly TapePoint[] Directions =
    [
        new(7, 0), new(7, 3), new(5, 5), new(3, 7), new(0, 7), new(-3, 7), new(-5, 5), new(-7, 3),
        new(-7, 0), new(-7, -3), new(-5, -5), new(-3, -7), new(0, -7), new(3, -7), new(5, -5), new(7, -3),
    ];

    /// <summary>Penetrations to add before the first one of the element; none where it is tied already.</summary>
    internal IReadOnlyList<TapePoint> In()
    {
        int[] from = [.. Enumerable.Range(element.First, element.Penetrations)];
        return IsTied(from) || Tip(from) is not { } tip ? [] : [stitches.At(from[0]), tip, stitches.At(from[0]), tip];
    }

    /// <summary>Penetrations to add behind the last one.</summary>
    internal IReadOnlyList<TapePoint> Off()
    {
        int[] from = [.. Enumerable.Range(element.First, element.Penetrations).Reverse()];
        return IsTied(from) || Tip(from) is not { } tip ? [] : [tip, stitches.At(from[0]), tip, stitches.At(from[0])];
    }

    private bool IsTied(int[] from) =>
        from.Length > TieStitches && Enumerable.Range(1, TieStitches).All(k =>
            Square(stitches.At(from[k]) - stitches.At(from[k - 1])) <= ShortStitch * ShortStitch
            && Square(stitches.At(from[k]) - stitches.At(from[0])) <= Near * Near);

    /// <summary>Where the tie goes and comes back from; null when all of the element lies in one hole.</summary>
    private TapePoint? Tip(int[] from)
    {
        var end = stitches.At(from[0]);
        if (!from.Any(at => stitches.At(at) != end))
            return null;
        var next = stitches.At(from.First(at => stitches.At(at) != end));
        var roomy = IsInside(end)
            ? Directions.Select((way, index) => (Tip: end + way, Way: way, Index: index)).Where(one => IsInside(one.Tip) && element.Box.Contains(one.Tip)).ToArray()
            : [];
        return roomy.Length == 0
            ? OnStitch(end, next)
            : roomy.OrderByDescending(one => Along(one.Way, next - end))
                .ThenByDescending(one => NearestHole(one.Tip))
                .ThenBy(one => one.Index)
                .First().Tip;
    }

    private bool IsInside(TapePoint at) => Directions
        .Select(way => new TapePoint(way.X * Inside / Length, way.Y * Inside / Length))
        .Append(TapePoint.Origin)
        .All(way => element.Cover.Contains(at + way));

    /// <summary>A place on the stitch from one end, or its other end when it is short.</summary>
    private static TapePoint OnStitch(TapePoint end, TapePoint next)
    {
        var way = next - end;
        var square = Square(way);
        if (square <= Length * Length)
            return next;
        var share = Length / Math.Sqrt(square);
        return end + new TapePoint((int)Math.Floor((way.X * share) + 0.5), (int)Math.Floor((way.Y * share) + 0.5));
    }

    /// <summary>How well a way goes along another: the cosine times its length, signed and squared, in whole numbers.</summary>
    private static long Along(TapePoint way, TapePoint other)
    {
        var dot = ((long)way.X * other.X) + ((long)way.Y * other.Y);
        return Math.Sign(dot) * (dot * dot * 64 / Square(way));
    }

    private long NearestHole(TapePoint at)
    {
        var nearest = long.MaxValue;
        for (var i = element.First; i <= element.Last; i++)
            nearest = Math.Min(nearest, Square(stitches.At(i) - at));
        return nearest;
    }

    private static long Square(TapePoint way) => ((long)way.X * way.X) + ((long)way.Y * way.Y);
}
