namespace CapPrep.Engine.Sequence.Search;

/// <summary>In which order the color blocks are sewn, which does not depend on the order inside them.</summary>
/// <param name="Order">Numbers of the blocks, from 0.</param>
/// <param name="Cost">Cost of all pairs of elements of different blocks.</param>
/// <param name="Bound">No order of the blocks costs less; equal to the cost when that is proven.</param>
internal sealed record BlockOrder(int[] Order, long Cost, long Bound)
{
    private const int MostIdeals = 50_000;
    private const long Effort = 20_000_000;
    private static readonly ulong Purpose = Fnv1a.Of("blocks"u8);

    internal static BlockOrder Of(OrderProblem problem, IReadOnlyList<int[]> blocks)
    {
        var order = BetweenBlocks(problem, blocks);
        if (Ideals.Of(order.Precedence, MostIdeals) is { } ideals)
        {
            var (cost, best) = IdealOrder.Of(order, ideals);
            return new(best, cost, cost);
        }

        var bound = CycleBound.Of(order);
        var found = InsertionSearch.From(order, [.. Enumerable.Range(0, blocks.Count)], bound, Effort);
        return new(found.Order, found.Cost, bound);
    }

    private static LinearOrder BetweenBlocks(OrderProblem problem, IReadOnlyList<int[]> blocks)
    {
        var costs = new long[blocks.Count * blocks.Count];
        var pairs = new List<(int Before, int After)>();
        for (var first = 0; first < blocks.Count; first++)
        {
            for (var second = 0; second < blocks.Count; second++)
            {
                if (first == second)
                    continue;
                costs[(first * blocks.Count) + second] = Between(problem.Order, blocks[first], blocks[second]);
                if (IsDecided(problem.Order.Precedence, blocks[first], blocks[second]))
                    pairs.Add((first, second));
            }
        }

        return new(costs, Precedence.Of(blocks.Count, pairs), Fnv1a.Of(problem.Order.Seed, Purpose));
    }

    private static long Between(LinearOrder order, int[] first, int[] second) =>
        first.Sum(one => second.Sum(other => order.Cost(one, other)));

    private static bool IsDecided(Precedence precedence, int[] first, int[] second) =>
        first.Any(one => second.Any(other => precedence.Orders(one, other)));
}
