using CapPrep.Engine.Measures;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Measures;

public sealed class BoxTests
{
    [Fact]
    public void A_union_is_the_smallest_box_around_both() =>
        new Box(0, 0, 10, 10).Union(new Box(-5, 3, 4, 20)).ShouldBe(new Box(-5, 0, 10, 20));

    [Fact]
    public void A_box_of_one_point_has_no_size_and_holds_it()
    {
        var box = Box.Of(new(3, -4));

        (box.Width, box.Height).ShouldBe((0, 0));
        box.Contains(new(3, -4)).ShouldBeTrue();
        box.Contains(new(3, -3)).ShouldBeFalse();
    }

    [Theory]
    [InlineData(-300, 300, 0)]
    [InlineData(-301, 300, -1)]
    [InlineData(10, 21, 15)]
    public void The_bottom_center_is_a_whole_unit(int left, int right, int x) =>
        new Box(left, 7, right, 90).BottomCenter.ShouldBe(new TapePoint(x, 7));

    [Fact]
    public void Tape_units_become_millimeters_at_a_tenth() =>
        new Box(-15, 0, 121, 4).ToMillimeters().ShouldBe(new BoxMm(-1.5, 0, 12.1, 0.4));

    [Theory]
    [InlineData(0.04, 0)]
    [InlineData(0.05, 1)]
    [InlineData(-0.05, -1)]
    [InlineData(12.1, 121)]
    public void Millimeters_become_the_nearest_tape_unit(double millimeters, int units) =>
        Tenths.FromMillimeters(millimeters).Value.ShouldBe(units);

    [Fact]
    public void A_turn_by_180_degrees_changes_both_signs()
    {
        new TapePoint(3, -4).Turned().ShouldBe(new TapePoint(-3, 4));
        new TapePoint(3, -4).Reach.ShouldBe(4);
    }
}
