using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class SplitSatinTests
{
    [Fact]
    public void A_wide_column_that_turns_with_every_row_split_in_two_is_satin()
    {
        var piece = Read.Of(Turning(share: _ => 0.5)).Pieces.ShouldHaveSingleItem();

        (piece.Class, piece.Sure).ShouldBe((StitchClass.Satin, true));
        piece.WidthMm.ShouldBe(9.0, 0.2);
    }

    [Fact]
    public void Split_points_may_lie_staggered() =>
        Read.Of(Turning(share: row => row % 2 == 0 ? 0.4 : 0.6)).Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Satin);

    [Fact]
    public void A_straight_column_split_evenly_is_satin_in_doubt()
    {
        var piece = Read.Of(Straight(share: row => row % 2 == 0 ? 0.42 : 0.58)).Pieces.ShouldHaveSingleItem();

        (piece.Class, piece.Sure).ShouldBe((StitchClass.Satin, false));
    }

    [Fact]
    public void A_straight_column_with_split_points_all_over_is_a_fill() =>
        Read.Of(Straight(share: row => (1 + (row % 5)) / 6.0)).Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Fill);

    [Fact]
    public void In_a_curve_with_short_rows_the_width_is_that_of_the_long_ones()
    {
        var draft = new Draft();
        for (var row = 0; row <= 200; row++)
            draft.Stitch(OnArc(row % 2 == 0 ? 130 : row % 4 == 1 ? 70 : 90, row, 200));

        Read.Of(draft).Pieces.ShouldHaveSingleItem().WidthMm.ShouldBe(6.0, 0.1);
    }

    private static Draft Turning(Func<int, double> share)
    {
        var draft = new Draft();
        for (var row = 0; row <= 180; row++)
            Row(draft, OnArc(60, row, 180), OnArc(150, row, 180), row, share(row));
        return draft;
    }

    private static Draft Straight(Func<int, double> share)
    {
        var draft = new Draft();
        for (var row = 0; row <= 120; row++)
            Row(draft, Read.At(0, 2 * row), Read.At(90, 2 * row), row, share(row));
        return draft;
    }

    private static void Row(Draft draft, TapePoint inner, TapePoint outer, int row, double share)
    {
        var (from, to) = row % 2 == 0 ? (inner, outer) : (outer, inner);
        draft.Stitches([from, Way.Between(from, to, share), to]);
    }

    private static TapePoint OnArc(int radius, int row, int rows)
    {
        var (sine, cosine) = Math.SinCos(Math.PI * row / rows);
        return Read.At((int)Math.Round(radius * cosine), (int)Math.Round(radius * sine));
    }
}
