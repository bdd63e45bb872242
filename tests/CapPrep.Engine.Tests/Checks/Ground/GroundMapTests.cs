using CapPrep.Engine.Checks.Ground;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.Ground;

public sealed class GroundMapTests
{
    private static readonly Box Below = new(0, 0, 200, 200);
    private static readonly Box OnIt = new(50, 50, 150, 150);
    private static readonly Box Apart = new(400, 0, 500, 100);

    [Fact]
    public void A_fill_on_another_lies_on_cover_and_the_other_under_it()
    {
        var map = Of(Below, OnIt);

        map.All[1].OnCover.ShouldBeGreaterThan(0.95);
        map.All[1].Below.ShouldHaveSingleItem().Index.ShouldBe(0);
        map.All[1].UnderCover.ShouldBe(0);
        map.All[0].OnCover.ShouldBe(0);
        map.All[0].UnderCover.ShouldBe(0.25, 0.05);
        map.All[0].Above.ShouldHaveSingleItem().Index.ShouldBe(1);
    }

    [Fact]
    public void Fills_apart_have_nothing_under_them()
    {
        var map = Of(Below, Apart);

        map.All.ShouldAllBe(ground => ground.OnCover == 0 && ground.UnderCover == 0);
    }

    [Fact]
    public void Of_more_meetings_than_can_be_compared_nothing_is_said_to_lie_bare()
    {
        var many = new Draft().Move(new(0, 0)).Stitch(new(0, 0));
        for (var k = 0; k < 700; k++)
            many = many.Trim(new(0, 0)).Stitch(new(0, 0)).Sew(Column.Upright(new(0, 0), 30, 40));
        var map = new GroundMap(DesignReader.Read(StitchSequence.Of(many.ToTape("TEST"), 3)));

        map.All.Count.ShouldBeGreaterThan(640);
        map.All.ShouldAllBe(ground => ground.OnCover == 1 && ground.UnderCover == 1);
    }

    private static GroundMap Of(Box first, Box second) =>
        new(DesignReader.Read(StitchSequence.Of(new Draft()
            .Move(new(first.Left, first.Bottom)).Stitch(new(first.Left, first.Bottom)).Sew(Fill.Of(first))
            .ColorStop().Move(new(second.Left, second.Bottom)).Stitch(new(second.Left, second.Bottom)).Sew(Fill.Of(second))
            .ToTape("TEST"), 3)));
}
