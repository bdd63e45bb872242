namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// What can be done inside one color block: its curve, and what no order of it can go below.
/// </summary>
/// <param name="Curve">Least cost by number of trims.</param>
/// <param name="CostBound">No order costs less, whatever its trims.</param>
/// <param name="SumBound">No order has a lower sum of cost and trim price.</param>
internal sealed record BlockCurve(Curve Curve, long CostBound, long SumBound)
{
    // House limits: beyond these the exact ways take longer than they are worth.
    private const int MostIdealsForLabels = 3_000;
    private const int MostOfOneSizeForLabels = 800;
    private const int MostIdealsForOrder = 20_000;
    private const long FirstEffort = 2_000_000;
    private const long MoreEffort = 14_000_000;
    private const long StretchEffort = 4_000_000;
    private const long StretchEffortPerElement = 60_000;

    // A second price, since a ticket or a machine may allow fewer trims than pay.
    private const int DearTrims = 3;

    // Ways make a good order much harder to find. No design has them yet; published problems do.
    private const int BeamWidth = 1_000;
    private const long WayEffort = 120_000_000;

    /// <summary>The exact curve where the block is small or chained enough, else a searched one with a bound.</summary>
    internal static BlockCurve Of(BlockProblem problem)
    {
        if (problem.Count <= 1)
            return new(new([new(0, 0)], [[.. Enumerable.Range(0, problem.Count)]], IsExact: true), 0, 0);
        return Ideals.Of(problem.Order.Precedence, MostIdealsForLabels, MostOfOneSizeForLabels) is { } ideals
            ? Exact(problem, LabelOrder.Of(problem, ideals))
            : Searched(problem);
    }

    private static BlockCurve Exact(BlockProblem problem, Curve curve) =>
        new(curve, curve.Points[^1].Cost, curve.LeastSum(problem.TrimPrice));

    private static BlockCurve Searched(BlockProblem problem)
    {
        var received = Enumerable.Range(0, problem.Count).ToArray();
        var (_, order, bound) = BestOrder(problem.Order, received, MoreEffort);
        List<int[]> orders = [.. ThresholdSearch.Of(problem, [received, order]).Orders, order, .. Built(problem)];
        foreach (var price in new[] { problem.TrimPrice, DearTrims * problem.TrimPrice })
            orders.AddRange(StretchSearch.From(problem, CurveOf(problem, orders).BestAt(price), price, StretchSteps(problem) / 2));
        return new(CurveOf(problem, orders), bound, bound + (problem.TrimPrice * problem.FewestTrims()));
    }

    private static long StretchSteps(BlockProblem problem) =>
        problem.Ways.Length > 0 ? WayEffort : Math.Min(StretchEffort, StretchEffortPerElement * problem.Count);

    private static IEnumerable<int[]> Built(BlockProblem problem) =>
        problem.Ways.Length > 0 && BeamOrder.Of(problem, problem.TrimPrice, BeamWidth) is { } built ? [built] : [];

    private static Curve CurveOf(BlockProblem problem, IEnumerable<int[]> orders) => Curve.Of(
        from order in orders
        let trims = problem.TrimsOf(order)
        where trims is not null
        select (new CurvePoint(trims.Value, problem.CostOf(order)), order),
        isExact: false);

    /// <summary>What no order can cost less than, with trims for nothing.</summary>
    internal static long CostBoundOf(LinearOrder order) => BestOrder(order, [.. Enumerable.Range(0, order.Count)], moreEffort: 0).Bound;

    /// <summary>
    /// The least order cost with trims for nothing: search first; when it meets the bound that is proof, else exact
    /// where there are few enough ideals, else more search.
    /// </summary>
    private static (long Cost, int[] Order, long Bound) BestOrder(LinearOrder order, int[] start, long moreEffort)
    {
        var bound = CycleBound.Of(order);
        var found = InsertionSearch.From(order, start, bound, FirstEffort);
        if (found.Cost == bound)
            return (found.Cost, found.Order, bound);
        if (Ideals.Of(order.Precedence, MostIdealsForOrder) is { } ideals)
        {
            var (cost, best) = IdealOrder.Of(order, ideals);
            return (cost, best, cost);
        }

        found = InsertionSearch.From(order, found.Order, bound, moreEffort);
        return (found.Cost, found.Order, bound);
    }
}
