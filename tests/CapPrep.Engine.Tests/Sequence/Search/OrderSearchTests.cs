using CapPrep.Engine.Sequence.Search;
using CapPrep.TestKit.Orders;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Search;

/// <summary>The search over blocks against every order tried one by one.</summary>
public sealed class OrderSearchTests
{
    [Fact]
    public void The_curve_of_a_small_design_is_the_best_there_is() => Problems.Small.Sample(
        one =>
        {
            var search = OrderSearch.Of(one.Problem());

            search.IsExact.ShouldBeTrue();
            search.Points.ShouldBe(BestCurve(one));
        },
        iter: 300,
        seed: "0N0XIzNsQ0O2",
        threads: 1);

    [Fact]
    public void Every_point_of_the_curve_has_an_order_that_can_be_sewn() => Problems.Small.Sample(
        one =>
        {
            var search = OrderSearch.Of(one.Problem());
            var all = one.All().Select(order => (string.Join(' ', order.Order), new CurvePoint(order.Trims, order.Cost))).ToDictionary();

            foreach (var point in search.Points)
                all[string.Join(' ', search.OrderWith(point.Trims))].ShouldBe(point);
        },
        iter: 200,
        seed: "0000ABCdefgh",
        threads: 1);

    [Fact]
    public void No_order_lies_below_a_bound() => Problems.Small.Sample(
        one =>
        {
            var problem = one.Problem();
            var search = OrderSearch.Of(problem);
            var all = one.All().ToList();

            CycleBound.Of(problem.Order).ShouldBeLessThanOrEqualTo(all.Min(order => order.Cost));
            search.CostBound.ShouldBe(all.Min(order => order.Cost));
            search.SumBound.ShouldBe(all.Min(order => order.Cost + (one.Price * order.Trims)));
            all.Min(order => order.Trims).ShouldBeGreaterThanOrEqualTo(
                problem.Blocks().Sum(block => problem.Inside(block).FewestTrims()));
        },
        iter: 300,
        seed: "0000qwertyui",
        threads: 1);

    [Fact]
    public void A_block_too_large_for_the_exact_way_is_searched_as_well_as_tried_one_by_one() => Problems.Small.Sample(
        one =>
        {
            var problem = one.Problem().Inside([.. Enumerable.Range(0, one.Count)]);
            if (one.Count < 2 || one.Block[^1] > 0 || problem.Behind.Contains(Adjacency.Never))
                return;

            var curve = ThresholdSearch.Of(problem, [[.. Enumerable.Range(0, one.Count)]]);

            curve.LeastSum(one.Price).ShouldBe(BestCurve(one).Min(point => point.Cost + (one.Price * point.Trims)));
            curve.Points.Zip(curve.Orders).ShouldAllBe(found => problem.TrimsOf(found.Second) == found.First.Trims
                && problem.Order.CostOf(found.Second) == found.First.Cost && problem.Order.Allows(found.Second));
        },
        iter: 300,
        seed: "0000asdfghjk",
        threads: 1);

    [Fact]
    public void Search_gives_the_same_answer_every_time()
    {
        var problem = Large(count: 60);

        var one = OrderSearch.Of(problem);
        var other = OrderSearch.Of(problem);

        one.IsExact.ShouldBeFalse();
        other.Points.ShouldBe(one.Points);
        one.Points.ShouldAllBe(point => one.OrderWith(point.Trims).SequenceEqual(other.OrderWith(point.Trims)));
    }

    [Fact]
    public void A_large_design_is_bounded_from_below()
    {
        var problem = Large(count: 60);
        var search = OrderSearch.Of(problem);

        search.CostBound.ShouldBeLessThanOrEqualTo(search.Points[^1].Cost);
        search.SumBound.ShouldBeLessThanOrEqualTo(search.Points.Min(point => point.Cost + (problem.TrimPrice * point.Trims)));
        search.Points.ShouldAllBe(point => problem.TrimsOf(search.OrderWith(point.Trims)) == point.Trims
            && problem.Order.CostOf(search.OrderWith(point.Trims)) == point.Cost
            && problem.Order.Allows(search.OrderWith(point.Trims)));
    }

    [Fact]
    public void More_blocks_than_can_be_tried_are_searched_and_bounded()
    {
        var problem = Large(count: 40) with { Block = [.. Enumerable.Range(0, 40)] };

        var search = OrderSearch.Of(problem);

        search.IsExact.ShouldBeFalse();
        search.Points.Count.ShouldBe(1);
        search.CostBound.ShouldBeLessThanOrEqualTo(search.Points[0].Cost);
    }

    /// <summary>Elements in two blocks whose received order is joined by thread; costs by a fixed formula.</summary>
    private static OrderProblem Large(int count)
    {
        var cost = KnownOrders.Matrix(count, (i, j) => ((i * 37) + (j * 91) + (i * j % 13 * 29)) % 101);
        var behind = from i in Enumerable.Range(0, count)
                     from j in Enumerable.Range(0, count)
                     select j == i + 1 ? Adjacency.Joined : Adjacency.Trimmed;
        return new(Problems.Linear(cost, (0, 9), (9, 20)), [.. Enumerable.Range(0, count).Select(i => i / (count / 2))], [.. behind], TrimPrice: 400);
    }

    private static IReadOnlyList<CurvePoint> BestCurve(Problems.Case one) => Curve.Of(
        one.All().Select(order => (new CurvePoint(order.Trims, order.Cost), order.Order)), isExact: true).Points;
}
