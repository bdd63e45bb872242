using CapPrep.Engine.Measures;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Measures;

public sealed class AxisTests
{
    private static readonly Gen<TapePoint> Line =
        Gen.Select(Gen.Int[-900, 900], Gen.Int[-900, 900], (x, y) => new TapePoint(x, y)).Where(line => line.Reach > 20);

    [Theory]
    [InlineData(100, 0, 0)]
    [InlineData(-100, 0, 0)]
    [InlineData(0, 100, 90)]
    [InlineData(0, -100, 90)]
    [InlineData(100, 100, 45)]
    [InlineData(100, -100, 135)]
    [InlineData(100, 58, 30.1)]
    public void The_angle_of_a_line_does_not_depend_on_its_sense(int x, int y, double degrees) =>
        Axis.Of(new(x, y)).Degrees.ShouldBe(degrees, 0.1001);

    [Fact]
    public void Angles_agree_with_the_library() => Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample(
        (x, y) =>
        {
            var expected = Math.Atan2(y, x) * 180 / Math.PI;
            Math.Abs(Trig.Degrees(x, y) - (expected < 0 ? expected + 360 : expected)).ShouldBeLessThan(0.001);
        },
        iter: 2000,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Near_directions_are_told_from_far_ones() => Gen.Select(Line, Line).Sample(
        (a, b) =>
        {
            var apart = Apart(a, b);
            if (Math.Abs(apart - 30) > 0.5)
                Axis.Of(a).IsWithin30Degrees(Axis.Of(b)).ShouldBe(apart < 30);
            if (Math.Abs(apart - 10) > 0.5)
                Axis.Of(a).IsWithin10Degrees(Axis.Of(b)).ShouldBe(apart < 10);
        },
        iter: 2000,
        seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Lines_all_around_have_no_direction()
    {
        var star = new[] { Axis.Of(new(100, 0)), Axis.Of(new(0, 100)), Axis.Of(new(71, 71)), Axis.Of(new(71, -71)) };

        star.Aggregate(Axis.None, (sum, axis) => sum.With(axis)).IsDirected.ShouldBeFalse();
        star[0].With(star[0]).IsDirected.ShouldBeTrue();
        Axis.None.IsDirected.ShouldBeFalse();
        Axis.None.IsWithin30Degrees(Axis.None).ShouldBeFalse();
    }

    [Fact]
    public void Very_long_sums_keep_their_direction()
    {
        var axis = new Axis(1L << 50, 1L << 49, 1L << 51);

        axis.IsWithin10Degrees(axis).ShouldBeTrue();
        axis.IsWithin30Degrees(new(-1L << 50, 0, 1L << 50)).ShouldBeFalse();
    }

    private static double Apart(TapePoint a, TapePoint b)
    {
        var apart = Math.Abs(Math.Atan2(a.Y, a.X) - Math.Atan2(b.Y, b.X)) * 180 / Math.PI % 180;
        return Math.Min(apart, 180 - apart);
    }
}
