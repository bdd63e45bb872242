using CapPrep.TestKit.Instances;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Search;

/// <summary>The reader of published ordering problems.</summary>
public sealed class OrderInstanceTests
{
    private const string Path = """
        NAME: small
        TYPE: SOP
        DIMENSION: 4
        EDGE_WEIGHT_SECTION
        4
         0  5  6 1000000
        -1  0 -1 7
        -1  2  0 8
        -1 -1 -1 0
        EOF
        """;

    [Fact]
    public void A_linear_ordering_problem_is_a_number_and_a_square()
    {
        var one = OrderInstanceReader.LinearOrdering("two", " 2\n 0 3\n-4 0\n");

        one.Matrix.ShouldBe(new long[,] { { 0, 3 }, { -4, 0 } });
        one.Pairs.ShouldBeEmpty();
    }

    [Fact]
    public void A_sequential_ordering_problem_says_its_pairs_by_minus_one()
    {
        var one = OrderInstanceReader.SequentialOrdering("small", Path);

        one.Pairs.ShouldBe([(0, 1), (2, 1), (0, 2), (0, 3), (1, 3), (2, 3)], ignoreOrder: true);
        one.Flat()[1].ShouldBe(5);
        one.Flat()[6].ShouldBe(0);
    }

    [Fact]
    public void A_problem_is_numbered_anew_so_that_its_items_stand_in_an_allowed_order()
    {
        var one = OrderInstanceReader.SequentialOrdering("small", Path).InAllowedOrder();

        one.Pairs.ShouldAllBe(pair => pair.Before < pair.After);
        one.Matrix[0, 1].ShouldBe(6);
        one.Matrix[1, 2].ShouldBe(2);
    }

    [Fact]
    public void A_matrix_without_header_is_read_too() =>
        OrderInstanceReader.SequentialOrdering("bare", "2\n0\t1\n-1\t0\n").Pairs.ShouldBe([(0, 1)]);

    [Theory]
    [InlineData("", "the first number")]
    [InlineData("0", "the first number")]
    [InlineData("1001 1", "the first number")]
    [InlineData("2 0 1 1", "3 numbers follow where 2 x 2 belong")]
    [InlineData("2 0 1 1 0 0", "5 numbers follow where 2 x 2 belong")]
    [InlineData("2 0 x 1 0", "'x' at place 3")]
    [InlineData("2 0 1.5 1 0", "'1.5' at place 3")]
    [InlineData("2 0 99999999999 1 0", "no whole number of 32 bits")]
    public void A_broken_square_is_refused_in_words(string text, string says)
    {
        Should.Throw<InvalidDataException>(() => OrderInstanceReader.LinearOrdering("broken", text)).Message.ShouldContain(says);
        Should.Throw<InvalidDataException>(() => OrderInstanceReader.SequentialOrdering("broken", text)).Message.ShouldStartWith("broken: ");
    }

    [Theory]
    [InlineData("TYPE: SOP\n2 0 1 1 0", "without EDGE_WEIGHT_SECTION")]
    [InlineData("3 0 1 1 1 0 -1 1 -1 0", "contradict")]
    [InlineData("2 0 -2 1 0", "the least is -1")]
    public void A_broken_sequential_ordering_problem_is_refused_in_words(string text, string says) =>
        Should.Throw<InvalidDataException>(() => OrderInstanceReader.SequentialOrdering("broken", text)).Message.ShouldContain(says);

    [Fact]
    public void A_list_of_best_values_stands_beside_the_table()
    {
        var all = BestKnown.Read("BEST.txt", "pal11 11 35 order0 0 1\n\nnew 7 12\n", BestKnown.LinearOrdering);

        all["pal11"].ShouldBe(new(35, IsOptimal: true));
        all["new"].ShouldBe(new(12, IsOptimal: false));
        Should.Throw<InvalidDataException>(() => BestKnown.Read("BEST.txt", "pal11 11", all)).Message.ShouldContain("'pal11 11'");
    }
}
