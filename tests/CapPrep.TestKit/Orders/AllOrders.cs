namespace CapPrep.TestKit.Orders;

/// <summary>Every order of a few items, tried one by one: slow, and too simple to be wrong.</summary>
public static class AllOrders
{
    /// <summary>The orders of 0 to <paramref name="count"/> - 1 that keep the pairs, in lexicographic order.</summary>
    public static IEnumerable<int[]> Of(int count, params IReadOnlyList<(int Before, int After)> pairs)
    {
        return From([]);

        IEnumerable<int[]> From(int[] begun) => begun.Length == count
            ? [begun]
            : Enumerable.Range(0, count)
                .Where(item => !begun.Contains(item)
                    && pairs.All(pair => pair.After != item || begun.Contains(pair.Before)))
                .SelectMany(item => From([.. begun, item]));
    }

    /// <summary>Sum over all pairs of what the matrix says for "row before column".</summary>
    public static long Cost(long[,] matrix, IReadOnlyList<int> order)
    {
        long sum = 0;
        for (var first = 0; first < order.Count; first++)
        {
            for (var second = first + 1; second < order.Count; second++)
                sum += matrix[order[first], order[second]];
        }

        return sum;
    }
}
