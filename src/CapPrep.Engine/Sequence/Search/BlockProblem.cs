namespace CapPrep.Engine.Sequence.Search;

/// <summary>The elements of one color block: the cost of their order, and what lies between neighbors.</summary>
/// <param name="Order">Cost and precedence; the order 0, 1, 2, ... is the received one.</param>
/// <param name="Behind">Row by row: what it takes to sew the column's element right behind the row's.</param>
/// <param name="TrimPrice">What a trim costs, in the unit of the order cost.</param>
internal sealed record BlockProblem(LinearOrder Order, Adjacency[] Behind, long TrimPrice)
{
    /// <summary>
    /// Row by row: what the way from the row's element to the column's costs beside the trim, in the unit of the order
    /// cost and never less than 0; empty when ways cost nothing.
    /// </summary>
    internal long[] Ways { get; init; } = [];

    internal int Count => Order.Count;

    internal Adjacency BehindOf(int first, int second) => Behind[(first * Count) + second];

    internal long WayOf(int first, int second) => Ways.Length == 0 ? 0 : Ways[(first * Count) + second];

    /// <summary>Order cost and ways of an order.</summary>
    internal long CostOf(ReadOnlySpan<int> order)
    {
        var cost = Order.CostOf(order);
        for (var at = 1; at < order.Length; at++)
            cost += WayOf(order[at - 1], order[at]);
        return cost;
    }

    /// <summary>Trims in an order; null when it cannot be sewn on this machine.</summary>
    internal int? TrimsOf(ReadOnlySpan<int> order)
    {
        var trims = 0;
        for (var at = 1; at < order.Length; at++)
        {
            var behind = BehindOf(order[at - 1], order[at]);
            if (behind == Adjacency.Never)
                return null;
            trims += (int)behind;
        }

        return trims;
    }

    /// <summary>No order has fewer trims: the parts that thread connects in either sense, less one.</summary>
    internal int FewestTrims()
    {
        var parts = Enumerable.Range(0, Count).ToArray();
        for (var first = 0; first < Count; first++)
        {
            for (var second = 0; second < Count; second++)
            {
                if (first != second && BehindOf(first, second) == Adjacency.Joined)
                    parts[PartOf(parts, first)] = PartOf(parts, second);
            }
        }

        return Count == 0 ? 0 : Enumerable.Range(0, Count).Count(item => parts[item] == item) - 1;
    }

    private static int PartOf(int[] parts, int item)
    {
        while (parts[item] != item)
            item = parts[item] = parts[parts[item]];
        return item;
    }
}
