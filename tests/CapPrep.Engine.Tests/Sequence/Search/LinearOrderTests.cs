using CapPrep.Engine.Sequence.Search;
using CapPrep.TestKit.Orders;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Search;

/// <summary>
/// Linear ordering with known answers. Values of the 4 x 4 and 6 x 6 matrices, of the cap grid and of the ideals were
/// worked out by trying every order; pal11 to pal23 are in the public library LOLIB.
/// </summary>
public sealed class LinearOrderTests
{
    private static readonly long[,] Four =
    {
        { 0, 5, 2, 1 },
        { 3, 0, 6, 4 },
        { 7, 1, 0, 8 },
        { 2, 9, 3, 0 },
    };

    private static readonly long[,] Six =
    {
        { 0, 16, 11, 15, 7, 3 },
        { 21, 0, 14, 15, 9, 8 },
        { 26, 23, 0, 26, 12, 10 },
        { 22, 22, 11, 0, 13, 9 },
        { 30, 28, 25, 24, 0, 20 },
        { 34, 29, 27, 28, 17, 0 },
    };

    [Fact]
    public void Four_items_have_one_best_order()
    {
        var (gain, order) = Largest(Four);

        gain.ShouldBe(32);
        order.ShouldBe([2, 3, 0, 1]);
    }

    [Fact]
    public void Six_items_have_one_best_order()
    {
        var (gain, order) = Largest(Six);

        gain.ShouldBe(385);
        order.ShouldBe([4, 5, 2, 3, 1, 0]);
    }

    [Fact]
    public void Decided_pairs_change_the_best_order()
    {
        var (gain, order) = Largest(Six, (0, 4), (1, 5));

        gain.ShouldBe(283);
        order.ShouldBe([1, 5, 2, 0, 4, 3]);
    }

    [Theory]
    [InlineData(11, 35)]
    [InlineData(13, 57)]
    public void A_Paley_tournament_is_solved_exactly(int prime, int value) => Largest(KnownOrders.Paley(prime)).Gain.ShouldBe(value);

    [Theory]
    [InlineData(11, 35)]
    [InlineData(13, 57)]
    [InlineData(19, 107)]
    [InlineData(23, 161)]
    public void Search_reaches_the_known_value_of_a_Paley_tournament(int prime, int value)
    {
        var cost = KnownOrders.ToCost(KnownOrders.Paley(prime));
        var problem = Problems.Linear(cost);

        var found = InsertionSearch.From(problem, [.. Enumerable.Range(0, prime)], bound: 0, steps: 2_000_000);

        (KnownOrders.Total(cost) - found.Cost).ShouldBe(value);
        problem.CostOf(found.Order).ShouldBe(found.Cost);
    }

    [Theory]
    [InlineData(new int[0], 0, 512)]
    [InlineData(new[] { 7, 0 }, 8, 384)]
    [InlineData(new[] { 7, 0, 8, 1 }, 20, 288)]
    public void A_wall_of_letters_on_a_cap_costs_what_it_must(int[] decided, int least, int ideals)
    {
        var problem = Problems.Linear(KnownOrders.CapGrid(), Pairs(decided));

        Ideals.Of(problem.Precedence, most: 1000).ShouldNotBeNull().Count.ShouldBe(ideals);
        Best(problem).Cost.ShouldBe(least);
        CycleBound.Of(problem).ShouldBeLessThanOrEqualTo(least);
    }

    [Theory]
    [InlineData(new int[0], 0, 8)]
    [InlineData(new[] { 7, 0 }, 8, 16)]
    [InlineData(new[] { 7, 0, 8, 1 }, 20, 40)]
    public void So_many_orders_of_the_wall_are_best(int[] decided, int least, int orders) =>
        AllOrders.Of(9, Pairs(decided)).Count(order => AllOrders.Cost(KnownOrders.CapGrid(), order) == least).ShouldBe(orders);

    [Theory]
    [InlineData(new[] { 0, 1, 2, 3, 4, 5, 6, 7, 8 }, 3)]
    [InlineData(new[] { 7, 6, 8, 4, 3, 5, 1, 0, 2 }, 54)]
    [InlineData(new[] { 8, 7, 6, 5, 4, 3, 2, 1, 0 }, 57)]
    public void An_order_of_the_wall_and_its_reverse_cost_sixty_together(int[] order, int cost)
    {
        var problem = Problems.Linear(KnownOrders.CapGrid());

        problem.CostOf(order).ShouldBe(cost);
        problem.CostOf([.. order.Reverse()]).ShouldBe(60 - cost);
    }

    /// <summary>Each two letters cost the same in the one order or the other: so whatever the order, it and its reverse cost sixty.</summary>
    [Fact]
    public void All_pairs_of_the_wall_cost_sixty_both_ways_together() => KnownOrders.Total(KnownOrders.CapGrid()).ShouldBe(60);

    /// <summary>ESC07 of the public library TSPLIB, whose best value it lists as 2125; ideals and orders were counted by trying every subset and every order.</summary>
    [Fact]
    public void The_pairs_of_a_public_sequential_ordering_problem_are_kept()
    {
        (int Before, int After)[] pairs =
        [
            .. from after in Enumerable.Range(0, 9)
               from before in Enumerable.Range(0, 9)
               where KnownOrders.Esc07[after, before] < 0
               select (before, after),
        ];
        var precedence = Precedence.Of(9, pairs);

        var orders = AllOrders.Of(9, pairs).ToList();

        Ideals.Of(precedence, most: 1000).ShouldNotBeNull().Count.ShouldBe(42);
        orders.Min(order => order.Zip(order.Skip(1)).Sum(step => KnownOrders.Esc07[step.First, step.Second])).ShouldBe(2125);
        orders.ShouldAllBe(order => Problems.Linear(KnownOrders.Esc07, pairs).Allows(order));
        orders.Count.ShouldBe(252);
    }

    /// <summary>Ideals and linear extensions of small partial orders; standard values of combinatorics.</summary>
    [Theory]
    [InlineData("antichain of 5", 32, 120)]
    [InlineData("chain of 6", 7, 1)]
    [InlineData("grid 3 x 3", 20, 42)]
    [InlineData("grid 2 x 5", 21, 42)]
    [InlineData("three chains of 3", 64, 1680)]
    [InlineData("N", 8, 5)]
    [InlineData("cube", 20, 48)]
    public void Ideals_and_orders_of_a_small_precedence_are_counted(string shape, int ideals, int orders)
    {
        var (count, pairs) = Shape(shape);

        Ideals.Of(Precedence.Of(count, pairs), most: 1000).ShouldNotBeNull().Count.ShouldBe(ideals);
        AllOrders.Of(count, pairs).Count().ShouldBe(orders);
    }

    [Theory]
    [InlineData(511, int.MaxValue)]
    [InlineData(1000, 125)]
    public void Too_many_ideals_are_given_up(int most, int mostOfOneSize) =>
        Ideals.Of(Precedence.Of(9, []), most, mostOfOneSize).ShouldBeNull();

    [Fact]
    public void Pairs_that_contradict_each_other_are_no_precedence() =>
        Should.Throw<ArgumentException>(() => Precedence.Of(3, [(0, 1), (1, 2), (2, 0)]));

    [Fact]
    public void What_follows_from_pairs_is_decided_too()
    {
        var precedence = Precedence.Of(70, [(68, 69), (3, 68), (0, 3)]);

        precedence.Orders(0, 69).ShouldBeTrue();
        precedence.IsFree(0, 1).ShouldBeTrue();
        precedence.Pairs.ShouldBe(6);
        precedence.Among([69, 0]).Orders(1, 0).ShouldBeTrue();
    }

    private static (long Gain, int[] Order) Largest(long[,] gain, params (int Before, int After)[] pairs)
    {
        var cost = KnownOrders.ToCost(gain);
        var best = Best(Problems.Linear(cost, pairs));
        return (KnownOrders.Total(cost) - best.Cost, best.Order);
    }

    private static (long Cost, int[] Order) Best(LinearOrder problem) =>
        IdealOrder.Of(problem, Ideals.Of(problem.Precedence, most: 50_000).ShouldNotBeNull());

    private static (int Before, int After)[] Pairs(int[] flat) => [.. flat.Chunk(2).Select(pair => (pair[0], pair[1]))];

    private static (int Count, (int Before, int After)[] Pairs) Shape(string shape) => shape switch
    {
        "antichain of 5" => (5, []),
        "chain of 6" => (6, [.. Enumerable.Range(0, 5).Select(i => (i, i + 1))]),
        "grid 3 x 3" => (9, Grid(3, 3)),
        "grid 2 x 5" => (10, Grid(2, 5)),
        "three chains of 3" => (9, [(0, 1), (1, 2), (3, 4), (4, 5), (6, 7), (7, 8)]),
        "N" => (4, [(0, 2), (1, 2), (1, 3)]),
        "cube" => (8, [.. from i in Enumerable.Range(0, 8) from bit in new[] { 1, 2, 4 } where (i & bit) == 0 select (i, i | bit)]),
        _ => throw new ArgumentOutOfRangeException(nameof(shape)),
    };

    private static (int Before, int After)[] Grid(int rows, int columns) =>
    [
        .. from i in Enumerable.Range(0, rows * columns) where (i + 1) % columns != 0 select (i, i + 1),
        .. from i in Enumerable.Range(0, (rows - 1) * columns) select (i, i + columns),
    ];
}
