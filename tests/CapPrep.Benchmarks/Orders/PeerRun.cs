using System.Diagnostics;
using System.Globalization;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Benchmarks.Orders;

/// <summary>Random small designs, ordered by the engine and by OR-Tools; both must reach the same least sum.</summary>
internal static class PeerRun
{
    /// <summary>1 when one sum differs, else 0.</summary>
    internal static int Of(int count, TextWriter output)
    {
        var (exact, different, proven, elements) = (0, 0, 0, 0);
        var (ours, theirs) = (new Stopwatch(), new Stopwatch());
        for (var number = 0; number < count; number++)
        {
            var problem = PeerProblems.Of(number);
            ours.Start();
            var search = OrderSearch.Of(problem);
            ours.Stop();
            theirs.Start();
            var peer = PeerModel.LeastSum(problem);
            theirs.Stop();
            var found = search.Points.Min(point => point.Cost + (problem.TrimPrice * point.Trims));
            elements += problem.Count;
            exact += search.IsExact ? 1 : 0;
            proven += search.IsExact || found == search.SumBound ? 1 : 0;
            if (found == peer && search.SumBound <= peer && IsTrue(problem, search, found))
                continue;
            different++;
            output.WriteLine(Text($"{number}: {problem.Count} elements, {problem.Blocks().Count} blocks: found {found}, bound {search.SumBound}, the other solver {peer}"));
        }

        output.WriteLine(Text($"{count} problems, {elements} elements: {count - different} agree, {different} differ; {exact} by the exact way, {proven} proven"));
        output.WriteLine(Text($"seconds: engine {ours.Elapsed.TotalSeconds:0.00}, OR-Tools {theirs.Elapsed.TotalSeconds:0.00}"));
        return different > 0 ? 1 : 0;
    }

    /// <summary>The order that belongs to the least sum keeps all pairs and has that sum when counted anew.</summary>
    private static bool IsTrue(OrderProblem problem, OrderSearch search, long found)
    {
        var point = search.Points.First(point => point.Cost + (problem.TrimPrice * point.Trims) == found);
        var order = search.OrderWith(point.Trims);
        return problem.Order.Allows(order)
            && problem.Order.CostOf(order) + (problem.TrimPrice * problem.TrimsOf(order)) == found;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
