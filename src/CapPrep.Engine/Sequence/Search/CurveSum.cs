namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// The curve of a whole design from those of its blocks: for every number of trims the best way to share them out.
/// </summary>
internal sealed class CurveSum
{
    private readonly IReadOnlyList<Curve> _blocks;
    private readonly List<int[]> _chosen = [];

    private CurveSum(IReadOnlyList<Curve> blocks) => _blocks = blocks;

    /// <summary>Rising trims and falling cost; the cost inside the blocks only.</summary>
    internal IReadOnlyList<CurvePoint> Points { get; private set; } = [];

    internal static CurveSum Of(IReadOnlyList<Curve> blocks)
    {
        var sum = new CurveSum(blocks);
        long[] costs = [0];
        foreach (var block in blocks)
            costs = sum.With(block, costs);
        sum.Points = Curve.Of(
            costs.Select((cost, trims) => (new CurvePoint(trims, cost), Array.Empty<int>()))
                .Where(point => point.Item1.Cost != long.MaxValue),
            isExact: true).Points;
        return sum;
    }

    /// <summary>Which point of every block's curve makes up so many trims.</summary>
    internal int[] Shares(int trims)
    {
        var shares = new int[_blocks.Count];
        for (var block = _blocks.Count - 1; block >= 0; block--)
        {
            shares[block] = _chosen[block][trims];
            trims -= _blocks[block].Points[shares[block]].Trims;
        }

        return shares;
    }

    private long[] With(Curve block, long[] costs)
    {
        var most = costs.Length - 1 + block.Points[^1].Trims;
        var sums = new long[most + 1];
        var chosen = new int[most + 1];
        Array.Fill(sums, long.MaxValue);
        for (var point = 0; point < block.Points.Count; point++)
        {
            for (var trims = 0; trims < costs.Length; trims++)
            {
                if (costs[trims] == long.MaxValue)
                    continue;
                var (sum, at) = (costs[trims] + block.Points[point].Cost, trims + block.Points[point].Trims);
                if (sum < sums[at])
                    (sums[at], chosen[at]) = (sum, point);
            }
        }

        _chosen.Add(chosen);
        return sums;
    }
}
