using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Tape units are 0.1 mm.</summary>
public sealed class ShortStitchTests
{
    /// <summary>So many short stitches have one needle point more.</summary>
    [Theory]
    [InlineData(4, null)]
    [InlineData(5, Severity.Note)]
    public void Six_needle_points_of_short_stitches_in_a_circle_are_a_note(int shortStitches, Severity? expected) =>
        Level(Line(3, shortStitches)).ShouldBe(expected);

    /// <summary>Nine needle points in three rows lie inside a circle of 2 mm at either distance.</summary>
    [Theory]
    [InlineData(5, null)]
    [InlineData(4, Severity.Note)]
    public void A_stitch_is_short_below_half_a_millimeter(int apart, Severity? expected) => Level(new Draft()
        .Run(25, new TapePoint(-300, 0), new TapePoint(-25, 0))
        .Grid(apart, apart, 3 * apart, 3 * apart)
        .Run(25, new TapePoint(30, 20), new TapePoint(300, 20))).ShouldBe(expected);

    /// <summary>Seven needle points of stitches of 0.3 mm lie inside a circle of 2 mm, five of those of 0.4 mm.</summary>
    [Theory]
    [InlineData(4, null)]
    [InlineData(3, Severity.Note)]
    public void The_circle_is_two_millimeters_wide(int stitch, Severity? expected) => Level(Line(stitch, 12)).ShouldBe(expected);

    [Fact]
    public void Short_stitches_where_the_holes_are_dense_are_a_warn() =>
        Level(new Draft().Grid(2, 3, 60, 60)).ShouldBe(Severity.Warn);

    [Fact]
    public void Ties_are_short_on_purpose() => Level(new Draft()
        .Stitch(new(0, 0)).Tie(new(0, 100), length: 4).Sew(Column.Upright(new(0, 0), 30, 150)).Tie(new(0, 0), length: 4)
        .Trim(new(200, 0)).Tie(new(200, 100), length: 4).Sew(Column.Upright(new(200, 0), 30, 150))).ShouldBeNull();

    /// <summary>Turning ends 0.3 mm long, seven needle points of them inside a circle of 2 mm.</summary>
    [Fact]
    public void The_turning_end_of_a_row_is_no_short_stitch() => Level(new Draft().Stitches(
        Enumerable.Range(0, 50).SelectMany(row => new TapePoint[] { new(row % 2 * 30, row * 3), new((row + 1) % 2 * 30, row * 3) }))).ShouldBeNull();

    /// <summary>100 stitches, some of them of 0.2 mm and far from each other.</summary>
    [Theory]
    [InlineData(3, null)]
    [InlineData(4, Severity.Note)]
    public void More_than_three_in_a_hundred_tiny_stitches_are_a_note_of_the_whole_design(int tiny, Severity? expected)
    {
        var draft = new Draft().Stitch(new(0, 0));
        for (var i = 0; i < 100; i++)
            draft.Stitch(draft.At + new TapePoint(i % 20 == 5 && i / 20 < tiny ? 2 : 10, i % 20 == 19 ? 50 : 0));

        var finding = Finding(draft);

        (finding?.Severity).ShouldBe(expected);
        finding?.Message.ShouldBe("4 % of all stitches are under 0.3 mm.");
        finding?.Places.ShouldHaveSingleItem().Stitches.ShouldBe(new StitchRange(1, 101));
    }

    [Fact]
    public void A_place_names_its_stitches_and_lies_on_the_cap()
    {
        var finding = Finding(Line(3, 12)).ShouldNotBeNull();

        finding.Measured.ShouldBe(new Quantity(7, "needle points"));
        finding.Message.ShouldBe("At 1 place up to 7 needle points of stitches under 0.5 mm lie inside a circle of 2 mm.");
        var place = finding.Places.ShouldHaveSingleItem();
        place.Blocks.ShouldBe([1]);
        place.Stitches.ShouldBe(new StitchRange(15, 23));
        place.BoxMm!.Value.Width.ShouldBe((8 * 0.3) + 2, 0.001);
        place.BoxMm.Value.Bottom.ShouldBe(13 - 1, 0.001);
    }

    [Fact]
    public void A_shop_may_allow_more()
    {
        var book = new RuleBook
        {
            Id = "harbor",
            Name = "Harbor",
            Rules = [new RuleChange("stitch.short") { Limits = [new LimitChange(Severity.Note, 7, false), new LimitChange(Severity.Warn, 7, false)] }],
        };

        (Of(Line(3, 12)) with { Book = book }).Finding("stitch.short").ShouldBeNull();
    }

    /// <summary>Thirteen needle points 2 mm apart, some short stitches, and again thirteen.</summary>
    private static Draft Line(int stitch, int count) => new Draft()
        .Run(20, new TapePoint(-240, 0), new TapePoint(0, 0))
        .Run(stitch, new TapePoint(0, 0), new TapePoint(stitch * count, 0))
        .Run(20, new TapePoint(stitch * count, 0), new TapePoint((stitch * count) + 240, 0));

    private static Job Of(Draft draft) => RuleCases.Drafted(_ => draft);

    private static Finding? Finding(Draft draft) => Of(draft).Finding("stitch.short");

    private static Severity? Level(Draft draft) => Finding(draft)?.Severity;
}
