using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>
/// The pairs of letters of one text line on one side of the seam. Every pair of letters weighs the same, however many
/// elements the two are sewn in.
/// </summary>
/// <param name="Pairs">Elements of pairs in two of them, the outer letter's first: wrong that way round.</param>
/// <param name="Within">Weight of the pairs in one element, whose order nothing changes.</param>
/// <param name="WrongWithin">Weight of those of them that are sewn inward.</param>
internal sealed record LinePairs(IReadOnlyList<WeighedPair> Pairs, long Within, long WrongWithin)
{
    // Of one pair of letters; divided by how many elements they have.
    private const long OneWeight = 1_000_000;

    /// <summary>All of them.</summary>
    public long Weight { get; } = Pairs.Sum(pair => pair.Weight) + Within;

    /// <param name="line">The letters.</param>
    /// <param name="threads">Thread of every element.</param>
    /// <param name="layers">Pairs of elements that layers keep in order; they do not count.</param>
    public static LinePairs Of(IReadOnlyList<LinePlace> line, IReadOnlyList<int> threads, Precedence layers)
    {
        var parts = line.GroupBy(place => place.FromSeam).ToDictionary(letter => letter.Key, letter => letter.Count());
        var all = (from outer in line
                   from inner in line
                   where IsOutside(outer, inner) && threads[outer.Element] == threads[inner.Element]
                   select (Outer: outer, Inner: inner, Weight: OneWeight / (parts[outer.FromSeam] * parts[inner.FromSeam]))).ToList();
        var within = all.Where(pair => pair.Outer.Element == pair.Inner.Element).ToList();
        return new(
            [.. all.Where(pair => pair.Outer.Element != pair.Inner.Element && layers.IsFree(pair.Outer.Element, pair.Inner.Element)).Select(pair => new WeighedPair(pair.Outer.Element, pair.Inner.Element, pair.Weight))],
            within.Sum(pair => pair.Weight),
            within.Where(pair => pair.Outer.First < pair.Inner.First).Sum(pair => pair.Weight));
    }

    /// <summary>Weight of the pairs sewn inward in an order.</summary>
    /// <param name="place">Place of every element in the order.</param>
    public long Wrong(int[] place) => WrongWithin + Pairs.Where(pair => place[pair.First] < place[pair.Second]).Sum(pair => pair.Weight);

    /// <summary>More than 0.1 mm farther out, on one side of the seam.</summary>
    public static bool IsOutside(LinePlace outer, LinePlace inner) =>
        Math.Abs(outer.FromSeam) > Math.Abs(inner.FromSeam) + 1
        && (inner.IsCenter || Math.Sign(outer.FromSeam) == Math.Sign(inner.FromSeam));
}

/// <summary>Two elements, the outer letter's first, and how much their order weighs.</summary>
internal readonly record struct WeighedPair(int First, int Second, long Weight);
