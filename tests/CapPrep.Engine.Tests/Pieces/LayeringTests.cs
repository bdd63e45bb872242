using CapPrep.Engine.Drafting;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>Overlaps counted by hand: a cell is 2.5 tape units, a line along a cell row covers floor(x / 2.5) from end to end.</summary>
public sealed class LayeringTests
{
    [Theory]
    [InlineData(37, 0)]
    [InlineData(38, 1)]
    public void Different_threads_keep_their_order_from_four_common_cells_on(int end, int pairs)
    {
        // The first line covers columns 0 to 40; the second begins in column 12 and shares 12 to 14, or 12 to 15.
        var reading = Read.Of(new Draft().Run(25, Read.At(0, 0), Read.At(100, 0)).ColorStop()
            .Move(Read.At(30, 0)).Run(8, Read.At(30, 0), Read.At(end, 0), Read.At(end, 100)));

        reading.MustFollow.Count.ShouldBe(pairs);
        if (pairs > 0)
            reading.MustFollow[0].ShouldBe(new MustFollow(0, 1, MustFollowReason.Overlap, 0.25));
    }

    /// <summary>Lines 0.3 mm apart lie in cell rows 0 and 1, lines 0.2 mm apart both in row 0.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    public void Lines_in_one_row_of_cells_overlap_though_their_boxes_lie_apart(int row, int pairs)
    {
        var reading = Read.Of(new Draft().Run(25, Read.At(0, row), Read.At(100, row)).ColorStop()
            .Move(Read.At(0, 4)).Run(25, Read.At(0, 4), Read.At(100, 4)));

        reading.MustFollow.Count.ShouldBe(pairs);
    }

    [Fact]
    public void One_thread_may_cross_itself_in_a_few_cells()
    {
        var draft = Cross();

        Read.Of(draft, threadOfBlock: [7, 7]).MustFollow.ShouldBeEmpty();
        Read.Of(draft, threadOfBlock: [7, 7]).Elements.ShouldAllBe(element => element.Thread == 7);
    }

    [Fact]
    public void One_thread_keeps_its_order_from_a_tenth_of_the_smaller_on()
    {
        // 40 of the 81 cells of the second line lie on the first.
        var draft = new Draft().Run(25, Read.At(0, 0), Read.At(300, 0)).ColorStop()
            .Move(Read.At(200, 0)).Run(25, Read.At(200, 0), Read.At(400, 0));

        var pair = Read.Of(draft, threadOfBlock: [1, 1]).MustFollow.ShouldHaveSingleItem();

        // Columns 80 to 120.
        pair.ShouldBe(new MustFollow(0, 1, MustFollowReason.Overlap, 41 / 16.0));
    }

    [Fact]
    public void Sections_of_one_fill_may_change_places()
    {
        var draft = new Draft().Sew(Bare(0, 200)).Trim(Read.At(190, 0)).Sew(Bare(190, 390));

        var reading = Read.Of(draft);

        reading.Elements.Count.ShouldBe(2);
        reading.MustFollow.ShouldBeEmpty();
    }

    [Fact]
    public void A_section_that_hides_underlay_of_the_one_before_follows_it()
    {
        var draft = new Draft().Sew(Read.Fill(0, 0, 200, 100)).Trim(Read.At(190, 0)).Sew(Bare(190, 390));

        Read.Of(draft).MustFollow.ShouldHaveSingleItem().Reason.ShouldBe(MustFollowReason.Underlay);
    }

    [Fact]
    public void Sections_of_one_fill_in_two_threads_may_not_change_places()
    {
        var draft = new Draft().Sew(Read.Fill(0, 0, 200, 100)).ColorStop()
            .Trim(Read.At(190, 0)).Sew(Read.Fill(190, 0, 390, 100));

        Read.Of(draft).MustFollow.ShouldHaveSingleItem().Reason.ShouldBe(MustFollowReason.Overlap);
    }

    [Fact]
    public void Columns_that_cross_at_a_right_angle_keep_their_order()
    {
        var level = new Column(new([Read.At(-60, 60), Read.At(90, 60)]), new([Read.At(-60, 90), Read.At(90, 90)]));

        var reading = Read.Of(new Draft().Sew(Read.Column(0, 0)).Trim(Read.At(-60, 60)).Sew(level));

        // They cross on 3 by 3 mm; where both have thread is less.
        reading.MustFollow.ShouldHaveSingleItem().OverlapMm2.ShouldBeInRange(4, 9);
    }

    [Fact]
    public void Satin_on_a_fill_of_its_own_thread_follows_it()
    {
        var reading = Read.Of(new Draft().Sew(Read.Fill(0, 0, 200, 200)).Trim(Read.At(80, 20)).Sew(Read.Column(80, 20)));

        reading.MustFollow.ShouldHaveSingleItem().ShouldSatisfyAllConditions(
            pair => (pair.Before, pair.After).ShouldBe((0, 1)),
            pair => pair.Reason.ShouldBe(MustFollowReason.Overlap));
    }

    [Fact]
    public void What_covers_a_float_goes_on_covering_it()
    {
        var draft = new Draft().Run(25, Read.At(0, 0), Read.At(0, 200)).Move(Read.At(60, 200)).Stitch(Read.At(120, 200))
            .Run(25, Read.At(120, 200), Read.At(120, 0)).ColorStop()
            .Move(Read.At(40, 150)).Sew(Read.Fill(40, 150, 80, 250));

        var reading = Read.Of(draft);

        reading.MustFollow.ShouldNotBeEmpty();
        reading.MustFollow.ShouldAllBe(pair => pair.Reason == MustFollowReason.Travel);
    }

    [Fact]
    public void Far_apart_nothing_has_to_follow() =>
        Read.Of(new Draft().Sew(Read.Column(0, 0)).Trim(Read.At(100, 0)).Sew(Read.Column(100, 0))).MustFollow.ShouldBeEmpty();

    private static Fill Bare(int left, int right) => Read.Fill(left, 0, right, 100) with { UnderlayPitch = 0 };

    private static Draft Cross() => new Draft().Run(25, Read.At(0, 0), Read.At(200, 0)).ColorStop()
        .Move(Read.At(100, -100)).Run(25, Read.At(100, -100), Read.At(100, 100));
}
