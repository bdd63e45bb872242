using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class CoverTests
{
    private static readonly CellGrid Grid = new(0, 0);

    private static readonly Gen<TapePoint> Point = Gen.Select(Gen.Int[-300, 300], Gen.Int[-120, 120], (x, y) => new TapePoint(x, y));

    private static readonly Gen<Cover> AnyCover = Point.Array[1, 12].Select(points => CoverPainter.Of(Grid, points));

    [Fact]
    public void A_position_lies_in_the_cell_below_it_counted_from_the_corner_of_the_design()
    {
        var grid = new CellGrid(-3, 11);
        int[] positions = [-9, -8, -6, -5, -4, -3, -2, -1, 0, 1, 2, 4, 5, 13];

        positions.Select(grid.Column).ShouldBe(positions.Select(position => (int)Math.Floor((position + 3) / 2.5)));
        positions.Select(grid.Row).ShouldBe(positions.Select(position => (int)Math.Floor((position - 11) / 2.5)));
    }

    [Fact]
    public void The_corner_of_a_cell_lies_in_it_or_half_a_unit_before_it()
    {
        var grid = new CellGrid(-3, 11);

        grid.Corner(0, 0).ShouldBe(new TapePoint(-3, 11));
        grid.Corner(2, 4).ShouldBe(new TapePoint(2, 21));
        grid.Corner(1, -1).ShouldBe(new TapePoint(-1, 8));
    }

    [Fact]
    public void A_level_line_of_ten_millimeters_covers_41_cells()
    {
        var cover = CoverPainter.Of(Grid, Read.At(0, 0), Read.At(100, 0));

        cover.Area.ShouldBe(41);
        cover.Contains(0, 0).ShouldBeTrue();
        cover.Contains(40, 0).ShouldBeTrue();
        cover.Contains(41, 0).ShouldBeFalse();
        cover.Contains(20, 1).ShouldBeFalse();
        cover.SquareMillimeters.ShouldBe(41 / 16.0);
    }

    [Fact]
    public void A_line_covers_the_same_cells_both_ways() => Gen.Select(Point, Point).Sample(
        (from, to) => Cells(CoverPainter.Of(Grid, from, to)).ShouldBe(Cells(CoverPainter.Of(Grid, to, from))),
        iter: 500,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void A_line_is_connected_and_holds_its_ends() => Gen.Select(Point, Point).Sample(
        (from, to) =>
        {
            var cover = CoverPainter.Of(Grid, from, to);
            cover.Contains(Grid.Column(from.X), Grid.Row(from.Y)).ShouldBeTrue();
            cover.Contains(Grid.Column(to.X), Grid.Row(to.Y)).ShouldBeTrue();
            cover.Area.ShouldBe(1 + Math.Max(
                Math.Abs(Grid.Column(to.X) - Grid.Column(from.X)), Math.Abs(Grid.Row(to.Y) - Grid.Row(from.Y))));
        },
        iter: 500,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Shared_cells_are_counted_as_sets_count_them() => Gen.Select(AnyCover, AnyCover).Sample(
        (one, other) =>
        {
            one.Area.ShouldBe(Cells(one).Count);
            one.Shared(other).ShouldBe(Cells(one).Intersect(Cells(other)).Count());
            other.Shared(one).ShouldBe(one.Shared(other));
        },
        iter: 300,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void A_grown_cover_holds_every_neighbor() => AnyCover.Sample(
        cover => Cells(cover.Grown()).ShouldBe(
            Cells(cover).SelectMany(cell => Neighbors(cell)).Distinct().OrderBy(cell => cell.Row).ThenBy(cell => cell.Column)),
        iter: 200,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Nothing_shares_nothing()
    {
        Cover.None.Area.ShouldBe(0);
        Cover.None.Shared(CoverPainter.Of(Grid, Read.At(0, 0))).ShouldBe(0);
        Cover.None.Touches(Cover.None).ShouldBeFalse();
        Cover.None.Row(0).Length.ShouldBe(0);
    }

    private static List<(int Column, int Row)> Cells(Cover cover) => [.. cover.CoveredCells()];

    private static IEnumerable<(int Column, int Row)> Neighbors((int Column, int Row) cell) =>
        from up in new[] { -1, 0, 1 }
        from aside in new[] { -1, 0, 1 }
        select (cell.Column + aside, cell.Row + up);
}
