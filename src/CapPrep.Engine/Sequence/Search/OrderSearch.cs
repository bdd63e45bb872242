namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// Finds orders of a design that sew every color block once: the order of the blocks by itself, then for each block
/// what fewer trims cost, then both put together. This loses nothing, since what pairs of different blocks cost does
/// not depend on the order inside, and no trim is counted at a change of color.
/// </summary>
internal sealed class OrderSearch
{
    private readonly IReadOnlyList<int[]> _blocks;
    private readonly BlockOrder _between;
    private readonly IReadOnlyList<BlockCurve> _inside;
    private readonly CurveSum _sum;

    private OrderSearch(OrderProblem problem, OrderSearch? like)
    {
        _blocks = problem.Blocks();
        _between = BlockOrder.Of(problem, _blocks.Count, inShort: like is not null);
        _inside = [.. _blocks.Select(block => like?.CurveOf(block) ?? BlockCurve.Of(problem.Inside(block)))];
        _sum = CurveSum.Of([.. _inside.Select(block => block.Curve)]);
        Points = [.. _sum.Points.Select(point => point with { Cost = point.Cost + _between.Cost })];
    }

    /// <summary>Least cost found by number of trims: trims rise, cost falls.</summary>
    internal IReadOnlyList<CurvePoint> Points { get; }

    /// <summary>No order that sews every color once costs less, whatever its trims.</summary>
    internal long CostBound => _between.Bound + _inside.Sum(block => block.CostBound);

    /// <summary>No such order has a lower sum of cost and trim price.</summary>
    internal long SumBound => _between.Bound + _inside.Sum(block => block.SumBound);

    /// <summary>No order lies below <see cref="Points"/>, for any number of trims.</summary>
    internal bool IsExact => _between.Bound == _between.Cost && _inside.All(block => block.Curve.IsExact);

    /// <param name="problem">What is ordered.</param>
    /// <param name="like">The same with other blocks: what is known of those that stay is not worked out again,
    /// and a good order of the blocks is enough.</param>
    internal static OrderSearch Of(OrderProblem problem, OrderSearch? like = null) => new(problem, like);

    /// <summary>As <see cref="CostBound"/>, without looking for orders.</summary>
    internal static long CostBoundOf(OrderProblem problem)
    {
        var blocks = problem.Blocks();
        return BlockOrder.Of(problem, blocks.Count).Bound + blocks.Sum(block => BlockCurve.CostBoundOf(problem.Inside(block).Order));
    }

    private BlockCurve? CurveOf(int[] items)
    {
        for (var block = 0; block < _blocks.Count; block++)
        {
            if (_blocks[block].AsSpan().SequenceEqual(items))
                return _inside[block];
        }

        return null;
    }

    /// <summary>The order that belongs to a point of <see cref="Points"/>.</summary>
    internal int[] OrderWith(int trims)
    {
        var shares = _sum.Shares(trims);
        return [.. _between.Order.SelectMany(block =>
            _inside[block].Curve.Orders[shares[block]].Select(item => _blocks[block][item]))];
    }
}
