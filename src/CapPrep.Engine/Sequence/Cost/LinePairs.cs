using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>The pairs of letters of one text line on one side of the seam.</summary>
/// <param name="Pairs">Elements of pairs in two of them, the outer letter's first: wrong that way round.</param>
/// <param name="Within">Pairs in one element, whose order nothing changes.</param>
/// <param name="WrongWithin">Those of them that are sewn inward.</param>
internal sealed record LinePairs(IReadOnlyList<(int First, int Second)> Pairs, int Within, int WrongWithin)
{
    /// <summary>All of them.</summary>
    public int Count => Pairs.Count + Within;

    /// <param name="line">The letters.</param>
    /// <param name="threads">Thread of every element.</param>
    /// <param name="layers">Pairs of elements that layers keep in order; they do not count.</param>
    public static LinePairs Of(IReadOnlyList<LinePlace> line, IReadOnlyList<int> threads, Precedence layers)
    {
        var all = (from outer in line
                   from inner in line
                   where IsOutside(outer, inner) && threads[outer.Element] == threads[inner.Element]
                   select (Outer: outer, Inner: inner)).ToList();
        var within = all.Where(pair => pair.Outer.Element == pair.Inner.Element).ToList();
        return new(
            [.. all.Where(pair => pair.Outer.Element != pair.Inner.Element && layers.IsFree(pair.Outer.Element, pair.Inner.Element)).Select(pair => (pair.Outer.Element, pair.Inner.Element))],
            within.Count,
            within.Count(pair => pair.Outer.First < pair.Inner.First));
    }

    /// <summary>Pairs sewn inward in an order.</summary>
    /// <param name="place">Place of every element in the order.</param>
    public int Wrong(int[] place) => WrongWithin + Pairs.Count(pair => place[pair.First] < place[pair.Second]);

    /// <summary>More than 0.1 mm farther out, on one side of the seam.</summary>
    public static bool IsOutside(LinePlace outer, LinePlace inner) =>
        Math.Abs(outer.FromSeam) > Math.Abs(inner.FromSeam) + 1
        && (inner.IsCenter || Math.Sign(outer.FromSeam) == Math.Sign(inner.FromSeam));
}
