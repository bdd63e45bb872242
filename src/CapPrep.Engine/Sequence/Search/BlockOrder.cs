namespace CapPrep.Engine.Sequence.Search;

/// <summary>In which order the color blocks are sewn, which does not depend on the order inside them.</summary>
/// <param name="Order">Numbers of the blocks, from 0.</param>
/// <param name="Cost">Cost of all pairs of elements of different blocks.</param>
/// <param name="Bound">No order of the blocks costs less; equal to the cost when that is proven.</param>
internal sealed record BlockOrder(int[] Order, long Cost, long Bound)
{
    private const int MostIdeals = 50_000;
    private const int FewIdeals = 1_000;
    private const long Effort = 20_000_000;
    private const long LittleEffort = 50_000;
    private static readonly ulong Purpose = Fnv1a.Of("blocks"u8);

    /// <param name="problem">Elements and their blocks.</param>
    /// <param name="blocks">How many blocks there are.</param>
    /// <param name="inShort">A good order is enough.</param>
    /// <exception cref="ArgumentException">No order sews every block once.</exception>
    internal static BlockOrder Of(OrderProblem problem, int blocks, bool inShort = false)
    {
        var order = BetweenBlocks(problem, blocks) ?? throw new ArgumentException("The color blocks would have to come before each other.", nameof(problem));
        if (Ideals.Of(order.Precedence, inShort ? FewIdeals : MostIdeals) is { } ideals)
        {
            var (cost, best) = IdealOrder.Of(order, ideals);
            return new(best, cost, cost);
        }

        var bound = CycleBound.Of(order);
        var found = InsertionSearch.From(order, order.Precedence.Kept([.. Enumerable.Range(0, blocks)]), bound, inShort ? LittleEffort : Effort);
        return new(found.Order, found.Cost, bound);
    }

    /// <summary>What a good order costs, by moving single blocks to their best places; null when none sews every block once.</summary>
    /// <param name="problem">Elements and their blocks.</param>
    /// <param name="wanted">The blocks in about the order they are sewn.</param>
    internal static long? NearCost(OrderProblem problem, IReadOnlyList<int> wanted) =>
        BetweenBlocks(problem, wanted.Count) is { } order
            ? InsertionSearch.From(order, order.Precedence.Kept(wanted), bound: 0, steps: 0).Cost
            : null;

    private static LinearOrder? BetweenBlocks(OrderProblem problem, int blocks)
    {
        var costs = new long[blocks * blocks];
        var pairs = new bool[blocks * blocks];
        for (var first = 0; first < problem.Count; first++)
        {
            var row = problem.Block[first] * blocks;
            for (var second = 0; second < problem.Count; second++)
            {
                var pair = row + problem.Block[second];
                costs[pair] += problem.Order.Cost(first, second);
                pairs[pair] |= problem.Order.Precedence.Orders(first, second);
            }
        }

        for (var block = 0; block < blocks; block++)
            (costs[(block * blocks) + block], pairs[(block * blocks) + block]) = (0, false);
        var decided = Enumerable.Range(0, pairs.Length).Where(pair => pairs[pair]).Select(pair => (pair / blocks, pair % blocks));
        return Precedence.Find(blocks, decided) is { } precedence
            ? new(costs, precedence, Fnv1a.Of(problem.Order.Seed, Purpose))
            : null;
    }
}
