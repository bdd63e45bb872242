namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// A design to order: its elements in received order, the color block of each, and what lies between neighbors.
/// Every color block is sewn once and whole.
/// </summary>
/// <param name="Order">Cost and precedence of the elements.</param>
/// <param name="Block">Color block of each element, from 0 without gaps.</param>
/// <param name="Behind">Row by row: what it takes to sew the column's element right behind the row's, in one block.</param>
/// <param name="TrimPrice">What a trim costs, in the unit of the order cost.</param>
internal sealed record OrderProblem(LinearOrder Order, IReadOnlyList<int> Block, Adjacency[] Behind, long TrimPrice)
{
    /// <summary>Row by row: what the way from element to element costs, as in <see cref="BlockProblem.Ways"/>; ways between blocks do not count.</summary>
    internal long[] Ways { get; init; } = [];

    internal int Count => Order.Count;

    /// <summary>The elements of every block by its number, in received order.</summary>
    internal IReadOnlyList<int[]> Blocks() =>
        [.. Enumerable.Range(0, Count).GroupBy(item => Block[item]).OrderBy(block => block.Key).Select(block => block.ToArray())];

    /// <summary>The elements of one block alone.</summary>
    internal BlockProblem Inside(int[] items)
    {
        var order = Order.Among(items, purpose: (ulong)items[0]);
        return new(order, Among(items, Behind), TrimPrice) { Ways = Ways.Length == 0 ? [] : Among(items, Ways) };
    }

    private T[] Among<T>(int[] items, T[] all)
    {
        var part = new T[items.Length * items.Length];
        for (var first = 0; first < items.Length; first++)
        {
            for (var second = 0; second < items.Length; second++)
                part[(first * items.Length) + second] = all[(items[first] * Count) + items[second]];
        }

        return part;
    }

    /// <summary>Trims in an order of all elements; none is counted at a change of color.</summary>
    internal int TrimsOf(IReadOnlyList<int> order) => Enumerable.Range(1, Math.Max(0, order.Count - 1)).Count(at =>
        Block[order[at - 1]] == Block[order[at]]
        && Behind[(order[at - 1] * Count) + order[at]] != Adjacency.Joined);
}
