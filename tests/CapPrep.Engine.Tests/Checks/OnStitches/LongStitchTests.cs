using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Tape units are 0.1 mm.</summary>
public sealed class LongStitchTests
{
    /// <summary>
    /// Row L23: from 7 mm on a jump is called the standard, 10 mm is the longest (Stitch length, compiled embroidery
    /// skill articles, 2016, https://www.yumpu.com/en/document/view/56185124/compiled-embroidery-skill-articles/52).
    /// </summary>
    [Theory]
    [InlineData(70, null)]
    [InlineData(71, Severity.Note)]
    [InlineData(100, Severity.Note)]
    [InlineData(101, Severity.Warn)]
    public void A_running_stitch_passes_one_limit_after_the_other(int length, Severity? expected) =>
        Level(new Draft().Run(length, At(0, 0), At(length, 0))).ShouldBe(expected);

    [Fact]
    public void A_wide_satin_is_not_a_long_stitch() => Level(new Draft().Sew(Column.Upright(new(0, 0), 110, 200))).ShouldBeNull();

    /// <summary>Strokes of 11.9 and of 12.5 mm.</summary>
    [Theory]
    [InlineData(45, null)]
    [InlineData(60, Severity.Warn)]
    public void A_satin_stroke_longer_than_12_1_mm_is_a_warn(int slant, Severity? expected) => Level(new Draft().Sew(new Column(
        new([new(0, 0), new(0, 200)]), new([new(110, slant), new(110, 200 + slant)]))
    {
        UnderlayStitch = 0,
    })).ShouldBe(expected);

    [Fact]
    public void What_the_needle_passes_above_the_cloth_is_no_stitch() => Level(new Draft()
        .Run(25, At(0, 0), At(100, 0)).Move(new(190, 0)).Run(25, At(200, 0), At(300, 0))
        .Trim(new(300, 150)).Run(25, At(300, 150), At(400, 150))
        .ColorStop().Move(new(400, 0)).Run(25, At(420, 0), At(500, 0))).ShouldBeNull();

    [Fact]
    public void Basting_around_the_design_is_left_out() =>
        Level(Framed(new Draft().Run(80, At(-20, -20), At(380, -20), At(380, 220), At(-20, 220), At(-20, -10)))).ShouldBeNull();

    [Fact]
    public void A_line_of_long_stitches_beside_the_design_is_not() =>
        Level(Framed(new Draft().Run(80, At(-20, -20), At(380, -20)))).ShouldBe(Severity.Note);

    [Fact]
    public void One_long_stitch_in_an_outline_of_short_ones_is_not() =>
        Level(Framed(new Draft().Run(25, At(-20, -20), At(380, -20), At(380, 220), At(-20, 220), At(-20, 100)).Stitch(new(-20, 10))))
            .ShouldBe(Severity.Note);

    [Fact]
    public void A_net_that_tacks_the_cloth_down_is_left_out() =>
        Level(new Draft().Stitches(Enumerable.Range(0, 9).Select(k => At(10 + (k * 40), k % 2 == 0 ? 10 : 115)))
            .Trim(new(0, 0)).Sew(Fill.Of(new(0, 0, 360, 120)))).ShouldBeNull();

    [Fact]
    public void A_design_of_nothing_but_long_stitches_is_no_basting() =>
        Level(new Draft().Run(80, At(0, 0), At(400, 0), At(400, 240), At(0, 240), At(0, 10))).ShouldBe(Severity.Note);

    /// <summary>Wider than any cap: which stitches are satin is not known there.</summary>
    [Theory]
    [InlineData(110, 0, null)]
    [InlineData(110, 60, Severity.Warn)]
    public void A_tape_out_of_bounds_is_judged_by_its_longest_stitches_alone(int dx, int dy, Severity? expected) =>
        Level(new Draft().Stitches(Enumerable.Range(0, 50).Select(k => At(k * dx, k * dy)))).ShouldBe(expected);

    [Fact]
    public void All_of_them_are_counted_and_those_sewn_together_are_one_place()
    {
        var finding = RuleCases.Drafted(draft => draft
            .Run(25, At(0, 0), At(250, 0)).Run(80, At(250, 0), At(250, 160)).Run(25, At(250, 160), At(0, 160))
            .Run(25, At(0, 160), At(0, 300)).Stitch(new(90, 300))).Finding("stitch.long").ShouldNotBeNull();

        finding.Count.ShouldBe(3);
        finding.Measured.ShouldBe(new Quantity(9, "mm"));
        finding.Message.ShouldBe("3 stitches are longer than 7 mm, the longest 9 mm.");
        finding.Limit.Source!.Row.ShouldBe("L23");
        finding.Places.Select(place => place.Stitches).ShouldBe([new StitchRange(11, 13), new StitchRange(29, 30)]);
        finding.Places[0].BoxMm.ShouldBe(new BoxMm(12.5, 13, 12.5, 29));
    }

    [Fact]
    public void The_limit_named_holds_for_every_stitch_counted()
    {
        var finding = RuleCases.Drafted(draft => draft
            .Run(25, At(0, 0), At(250, 0)).Run(80, At(250, 0), At(250, 160)).Run(25, At(250, 160), At(0, 160)).Stitch(new(0, 265)))
            .Finding("stitch.long").ShouldNotBeNull();

        finding.Message.ShouldBe("3 stitches are longer than 7 mm, the longest 10.5 mm, which is over 10 mm.");
    }

    /// <summary>What is sewn first lies under or around a fill.</summary>
    private static Draft Framed(Draft first) => first.Trim(new(0, 0)).Sew(Fill.Of(new(0, 0, 360, 200)));

    private static TapePoint At(int x, int y) => new(x, y);

    private static Severity? Level(Draft draft) => RuleCases.Drafted(_ => draft).Finding("stitch.long")?.Severity;
}
