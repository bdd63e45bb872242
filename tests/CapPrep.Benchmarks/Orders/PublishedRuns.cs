using System.Diagnostics;
using CapPrep.Engine.Sequence.Search;
using CapPrep.TestKit.Instances;
using CapPrep.TestKit.Orders;

namespace CapPrep.Benchmarks.Orders;

/// <summary>Every published problem of a folder, ordered by the engine's search as one color block.</summary>
internal static class PublishedRuns
{
    private const string BestFile = "BEST.txt";
    private const double LinearGoal = 0.1;
    private const double SequentialGoal = 1;
    private const double DensePercent = 10;

    internal static int LinearOrdering(string folder, TextWriter output)
    {
        var best = BestIn(folder, BestKnown.LinearOrdering);
        var files = Directory.EnumerateFiles(folder).Where(file => Path.GetFileName(file) != BestFile);
        return ResultTable.Print(output, Instances(files, OrderInstanceReader.LinearOrdering).Select(one => LinearOrdering(one, best)));
    }

    internal static int SequentialOrdering(string folder, TextWriter output)
    {
        var best = BestIn(folder, BestKnown.SequentialOrdering);
        var files = Directory.EnumerateFiles(folder, "*.sop");
        return ResultTable.Print(output, Instances(files, OrderInstanceReader.SequentialOrdering).Select(one => SequentialOrdering(one, best)));
    }

    private static IReadOnlyDictionary<string, BestKnown> BestIn(string folder, IReadOnlyDictionary<string, BestKnown> table) =>
        Path.Combine(folder, BestFile) is var file && File.Exists(file) ? BestKnown.Read(BestFile, File.ReadAllText(file), table) : table;

    private static IEnumerable<OrderInstance> Instances(IEnumerable<string> files, Func<string, string, OrderInstance> read) =>
        from file in files.Order(StringComparer.Ordinal)
        let name = Path.GetFileName(file)
        select read(name.EndsWith(".sop", StringComparison.Ordinal) ? name[..^4] : name, File.ReadAllText(file));

    private static ResultRow LinearOrdering(OrderInstance one, IReadOnlyDictionary<string, BestKnown> best)
    {
        var cost = KnownOrders.ToCost(one.Matrix);
        var (search, order, seconds) = Search(new(Linear(one, [.. cost.Cast<long>()]), new int[one.Count], new Adjacency[one.Count * one.Count], TrimPrice: 0));
        var found = 0L;
        for (var first = 0; first < order.Length; first++)
        {
            for (var second = first + 1; second < order.Length; second++)
                found += one.Matrix[order[first], order[second]];
        }

        var known = best.GetValueOrDefault(one.Name);
        return new(one.Name, one.Count, known?.Value, found, known is null ? null : known.Value - found)
        {
            Claim = ClaimOf(search, bounded: "bounded"),
            GoalPercent = known is null ? null : known.IsOptimal ? 0 : LinearGoal,
            Seconds = seconds,
        };
    }

    private static ResultRow SequentialOrdering(OrderInstance one, IReadOnlyDictionary<string, BestKnown> best)
    {
        one = one.InAllowedOrder();
        var linear = Linear(one, new long[one.Count * one.Count]);
        var (search, order, seconds) = Search(new(linear, new int[one.Count], new Adjacency[one.Count * one.Count], TrimPrice: 0) { Ways = one.Flat() });
        var found = order.Zip(order.Skip(1)).Sum(step => one.Matrix[step.First, step.Second]);
        var known = best.GetValueOrDefault(one.Name);
        var dense = 100.0 * linear.Precedence.Among([.. Enumerable.Range(1, one.Count - 2)]).Pairs / (one.Count * (one.Count - 1) / 2);
        return new(one.Name, one.Count, known?.Value, found, known is null ? null : found - known.Value)
        {
            Claim = ClaimOf(search, bounded: "found"),
            GoalPercent = known switch { null => null, { IsOptimal: true } => 0, _ when dense >= DensePercent => SequentialGoal, _ => null },
            DecidedPercent = dense,
            Seconds = seconds,
        };
    }

    private static LinearOrder Linear(OrderInstance one, long[] cost) => new(cost, Precedence.Of(one.Count, one.Pairs), seed: 1);

    private static (OrderSearch Search, int[] Order, double Seconds) Search(OrderProblem problem)
    {
        var clock = Stopwatch.StartNew();
        var search = OrderSearch.Of(problem);
        var order = search.OrderWith(search.Points[^1].Trims);
        var seconds = clock.Elapsed.TotalSeconds;
        return problem.Order.Allows(order) && order.Distinct().Count() == problem.Count
            ? (search, order, seconds)
            : throw new InvalidOperationException("The order found breaks a pair.");
    }

    private static string ClaimOf(OrderSearch search, string bounded) =>
        search.IsExact || search.Points[^1].Cost == search.CostBound ? "proven" : bounded;
}
