namespace CapPrep.TestKit.Instances;

/// <summary>A published ordering problem, as its file has it.</summary>
/// <param name="Name">Name of the file, without the ending <c>.sop</c>.</param>
/// <param name="Matrix">
/// Linear ordering: what it gains that the row's item comes before the column's. Sequential ordering: the way from row
/// to column.
/// </param>
/// <param name="Pairs">What must come before what.</param>
public sealed record OrderInstance(string Name, long[,] Matrix, IReadOnlyList<(int Before, int After)> Pairs)
{
    /// <summary>Items to order.</summary>
    public int Count => Matrix.GetLength(0);

    /// <summary>The matrix row by row, what cannot be used (the diagonal, ways against a pair) as 0.</summary>
    public long[] Flat() => [.. Matrix.Cast<long>().Select((value, at) => at / Count == at % Count ? 0 : Math.Max(0, value))];

    /// <summary>The same problem with its items so numbered that 0, 1, 2, ... is an order that keeps all pairs.</summary>
    public OrderInstance InAllowedOrder()
    {
        var before = Pairs.ToLookup(pair => pair.After, pair => pair.Before);
        var order = new List<int>();
        while (order.Count < Count)
            order.Add(Enumerable.Range(0, Count).First(item => !order.Contains(item) && before[item].All(order.Contains)));
        var place = order.Select((item, at) => (item, at)).ToDictionary(one => one.item, one => one.at);
        var matrix = new long[Count, Count];
        for (var i = 0; i < Count; i++)
        {
            for (var j = 0; j < Count; j++)
                matrix[i, j] = Matrix[order[i], order[j]];
        }

        return new(Name, matrix, [.. Pairs.Select(pair => (place[pair.Before], place[pair.After]))]);
    }
}
