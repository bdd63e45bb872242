using CapPrep.Engine.Sequence.Search;
using CapPrep.TestKit.Instances;
using CapPrep.TestKit.Orders;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Search;

/// <summary>Orders whose neighbors cost something: trims, and ways as in sequential ordering problems.</summary>
public sealed class WaySearchTests
{
    /// <summary>ESC07 of the public library TSPLIB, whose best value it lists as 2125.</summary>
    private const long Esc07 = 2125;

    [Fact]
    public void A_public_sequential_ordering_problem_is_solved_exactly()
    {
        var search = OrderSearch.Of(PublicProblem());

        search.IsExact.ShouldBeTrue();
        search.Points[^1].Cost.ShouldBe(Esc07);
    }

    [Fact]
    public void A_beam_and_exchanged_stretches_reach_the_best_of_a_public_problem()
    {
        var block = PublicProblem().Inside([.. Enumerable.Range(0, 9)]);

        var built = BeamOrder.Of(block, price: 0, width: 50).ShouldNotBeNull();
        var exchanged = StretchSearch.From(block, [.. Enumerable.Range(0, 9)], price: 0, steps: 100_000).ShouldHaveSingleItem();

        block.CostOf(built).ShouldBe(Esc07);
        block.CostOf(exchanged).ShouldBe(Esc07);
        block.Order.Allows(built).ShouldBeTrue();
        block.Order.Allows(exchanged).ShouldBeTrue();
    }

    [Fact]
    public void Ways_count_in_the_exact_curve() => Problems.Small.Sample(
        one =>
        {
            var search = OrderSearch.Of(one.Problem() with { Ways = Ways(one) });

            search.IsExact.ShouldBeTrue();
            search.Points.ShouldBe(Curve.Of(
                one.All().Select(order => (new CurvePoint(order.Trims, order.Cost + WaysInside(one, order.Order)), order.Order)), isExact: true).Points);
        },
        iter: 200,
        seed: "0000waysABCD",
        threads: 1);

    [Fact]
    public void Exchanged_stretches_find_the_least_sum_of_a_small_block() => Problems.Small.Sample(
        one =>
        {
            if (one.Count < 2 || one.Block[^1] > 0)
                return;
            var block = one.Problem().Inside([.. Enumerable.Range(0, one.Count)]) with { Ways = Ways(one) };
            if (block.Behind.Contains(Adjacency.Never))
                return;

            var orders = StretchSearch.From(block, [.. Enumerable.Range(0, one.Count)], one.Price, steps: 20_000).ToList();

            orders.ShouldAllBe(order => block.Order.Allows(order));
            orders.Min(order => Sum(block, order, one.Price)).ShouldBe(one.All().Min(other => Sum(block, other.Order, one.Price)));
        },
        iter: 300,
        seed: "0000stretchA",
        threads: 1);

    [Fact]
    public void A_beam_that_keeps_every_way_is_exact_and_a_narrow_one_is_allowed() => Problems.Small.Sample(
        one =>
        {
            if (one.Block[^1] > 0)
                return;
            var block = one.Problem().Inside([.. Enumerable.Range(0, one.Count)]) with { Ways = Ways(one) };

            var wide = BeamOrder.Of(block, one.Price, width: 10_000).ShouldNotBeNull();
            var narrow = BeamOrder.Of(block, one.Price, width: 2);

            Sum(block, wide, one.Price).ShouldBe(one.All().Min(other => Sum(block, other.Order, one.Price)));
            if (narrow is not null)
                block.Order.Allows(narrow).ShouldBeTrue();
        },
        iter: 200,
        seed: "0000beamABCD",
        threads: 1);

    [Fact]
    public void Neighbors_that_cannot_be_are_never_made_by_exchanges()
    {
        var behind = from i in Enumerable.Range(0, 12)
                     from j in Enumerable.Range(0, 12)
                     select j == i + 1 ? Adjacency.Trimmed : (i + j) % 3 == 0 ? Adjacency.Joined : Adjacency.Never;
        var block = new BlockProblem(Problems.Linear(KnownOrders.Matrix(12, (i, j) => (i * 7) + (j * 5 % 11))), [.. behind], TrimPrice: 9);
        int[] received = [.. Enumerable.Range(0, 12)];

        var orders = StretchSearch.From(block, received, price: 9, steps: 20_000).ToList();

        orders.ShouldAllBe(order => block.TrimsOf(order) != null);
        orders.Min(order => Sum(block, order, 9)).ShouldBeLessThanOrEqualTo(Sum(block, received, 9));
    }

    private static OrderProblem PublicProblem()
    {
        var instance = new OrderInstance(
            "ESC07",
            KnownOrders.Esc07,
            [.. from after in Enumerable.Range(0, 9) from before in Enumerable.Range(0, 9) where KnownOrders.Esc07[after, before] < 0 select (before, after)]).InAllowedOrder();
        return new(Problems.Linear(new long[9, 9], instance.Pairs), new int[9], new Adjacency[81], TrimPrice: 0) { Ways = instance.Flat() };
    }

    private static long[] Ways(Problems.Case one) =>
        [.. from i in Enumerable.Range(0, one.Count) from j in Enumerable.Range(0, one.Count) select one.Costs[(j * one.Count) + i]];

    private static long WaysInside(Problems.Case one, int[] order) => order.Zip(order.Skip(1))
        .Where(step => one.Block[step.First] == one.Block[step.Second])
        .Sum(step => one.Costs[(step.Second * one.Count) + step.First]);

    private static long Sum(BlockProblem block, int[] order, long price) =>
        block.CostOf(order) + (price * block.TrimsOf(order).ShouldNotBeNull());
}
