namespace CapPrep.Engine.Sequence.Search;

/// <summary>Which items must come before which, with everything that follows from it.</summary>
internal sealed class Precedence
{
    private readonly ulong[] _before;
    private readonly int _words;

    private Precedence(int count)
    {
        (Count, _words) = (count, BitSet.WordsFor(count));
        _before = new ulong[count * _words];
    }

    internal int Count { get; }

    /// <summary>Ordered pairs, those that follow from others included.</summary>
    internal int Pairs => BitSet.Count(_before);

    /// <summary>The items that must come before one.</summary>
    internal ReadOnlySpan<ulong> Before(int item) => _before.AsSpan(item * _words, _words);

    /// <summary>The first item must come before the second.</summary>
    internal bool Orders(int first, int second) => BitSet.Has(Before(second), first);

    /// <summary>Neither must come before the other.</summary>
    internal bool IsFree(int one, int other) => !Orders(one, other) && !Orders(other, one);

    /// <exception cref="ArgumentException">The pairs contradict each other.</exception>
    internal static Precedence Of(int count, IEnumerable<(int Before, int After)> pairs)
    {
        var precedence = Closed(count, pairs);
        return precedence.Contradiction is { } item
            ? throw new ArgumentException($"Item {item} would have to come before itself.", nameof(pairs))
            : precedence;
    }

    /// <summary>Null when the pairs contradict each other.</summary>
    internal static Precedence? Find(int count, IEnumerable<(int Before, int After)> pairs) =>
        Closed(count, pairs) is { Contradiction: null } precedence ? precedence : null;

    /// <summary>An order that keeps all pairs: always the first of the wanted items that may come next.</summary>
    /// <param name="wanted">Every item once.</param>
    internal int[] Kept(IReadOnlyList<int> wanted)
    {
        var (order, done) = (new List<int>(Count), new ulong[_words]);
        while (order.Count < Count)
        {
            var next = wanted.First(item => !BitSet.Has(done, item) && BitSet.IsSubset(Before(item), done));
            order.Add(next);
            BitSet.Add(done, next);
        }

        return [.. order];
    }

    /// <summary>The same among some of the items, in the order given.</summary>
    internal Precedence Among(IReadOnlyList<int> items)
    {
        var part = new Precedence(items.Count);
        for (var after = 0; after < items.Count; after++)
        {
            for (var before = 0; before < items.Count; before++)
            {
                if (Orders(items[before], items[after]))
                    BitSet.Add(part.Row(after), before);
            }
        }

        return part;
    }

    private int? Contradiction
    {
        get
        {
            for (var item = 0; item < Count; item++)
            {
                if (Orders(item, item))
                    return item;
            }

            return null;
        }
    }

    private static Precedence Closed(int count, IEnumerable<(int Before, int After)> pairs)
    {
        var precedence = new Precedence(count);
        foreach (var (before, after) in pairs)
            BitSet.Add(precedence.Row(after), before);
        precedence.Close();
        return precedence;
    }

    private Span<ulong> Row(int item) => _before.AsSpan(item * _words, _words);

    private void Close()
    {
        for (var middle = 0; middle < Count; middle++)
        {
            for (var item = 0; item < Count; item++)
            {
                if (Orders(middle, item))
                    BitSet.AddAll(Row(item), Before(middle));
            }
        }
    }
}
