namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// Items to put in a line at least cost: every pair costs something depending on which of the two comes first, and
/// some pairs are decided.
/// </summary>
/// <param name="cost">Row by row: what it costs that the row's item comes before the column's; 0 on the diagonal.</param>
/// <param name="precedence">Pairs that are decided.</param>
/// <param name="seed">Beginning of every random stream about these items.</param>
internal sealed class LinearOrder(long[] cost, Precedence precedence, ulong seed)
{
    internal int Count => Precedence.Count;

    internal Precedence Precedence { get; } = precedence;

    internal ulong Seed { get; } = seed;

    internal long Cost(int first, int second) => cost[(first * Count) + second];

    internal ReadOnlySpan<long> CostsOf(int first) => cost.AsSpan(first * Count, Count);

    /// <summary>What an order costs; the order holds every item once.</summary>
    internal long CostOf(ReadOnlySpan<int> order)
    {
        long sum = 0;
        for (var at = 0; at < order.Length; at++)
        {
            var costs = CostsOf(order[at]);
            foreach (var later in order[(at + 1)..])
                sum += costs[later];
        }

        return sum;
    }

    /// <summary>An order keeps every decided pair.</summary>
    internal bool Allows(ReadOnlySpan<int> order)
    {
        var done = new ulong[BitSet.WordsFor(Count)];
        foreach (var item in order)
        {
            if (!BitSet.IsSubset(Precedence.Before(item), done))
                return false;
            BitSet.Add(done, item);
        }

        return true;
    }

    /// <summary>
    /// What it gains (less than zero) or costs to put a pair the other way round, row by row;
    /// <see cref="Decided"/> where that may not be, 0 where it may not stand that way at all.
    /// </summary>
    internal long[] Turns()
    {
        var turns = new long[Count * Count];
        for (var first = 0; first < Count; first++)
        {
            for (var second = 0; second < Count; second++)
            {
                turns[(first * Count) + second] = Precedence.Orders(first, second) ? Decided
                    : Precedence.Orders(second, first) ? 0
                    : Cost(second, first) - Cost(first, second);
            }
        }

        return turns;
    }

    /// <summary>In <see cref="Turns"/>: the pair may not be turned.</summary>
    internal const long Decided = long.MaxValue;

    /// <summary>The problem of some of the items alone, in the order given.</summary>
    internal LinearOrder Among(IReadOnlyList<int> items, ulong purpose)
    {
        var part = new long[items.Count * items.Count];
        for (var i = 0; i < items.Count; i++)
        {
            for (var j = 0; j < items.Count; j++)
                part[(i * items.Count) + j] = Cost(items[i], items[j]);
        }

        return new(part, Precedence.Among(items), Fnv1a.Of(Seed, purpose));
    }
}
