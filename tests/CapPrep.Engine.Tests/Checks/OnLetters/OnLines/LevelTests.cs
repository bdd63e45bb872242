using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters.OnLines;

public sealed class LevelTests
{
    private const string NotLevel = "place.not-level";
    private const string Bow = "place.bow";

    private static readonly TextToSew Line = new("HARBOR LINE") { XHeight = 50 };

    private static readonly TextToSew Long = new("HARBOR LINE DAILY") { XHeight = 45, Space = 80 };

    private static readonly Job Low = Job.Clean.On("six-panel-structured-low");

    [Theory]
    [InlineData(0, null)]
    [InlineData(0.6, null)]
    [InlineData(0.8, Severity.Warn)]
    [InlineData(-0.8, Severity.Warn)]
    [InlineData(3.8, Severity.Warn)]
    [InlineData(4.2, Severity.Note)]
    [InlineData(-12, Severity.Note)]
    public void A_little_askew_warns_and_more_is_taken_as_drawn_so(double tilt, Severity? expected) =>
        Lettered.Of(Line with { TiltDegrees = tilt }).Level(NotLevel).ShouldBe(expected);

    [Theory]
    [InlineData(2, "A line of letters rises by 2 degrees to the viewer's right. On a cap that looks like bad framing.")]
    [InlineData(-8, "A line of letters rises by 8 degrees to the viewer's left. It is taken as drawn so.")]
    public void The_side_that_is_higher_is_named(double tilt, string message)
    {
        var finding = Lettered.Of(Line with { TiltDegrees = tilt }).Finding(NotLevel).ShouldNotBeNull();

        finding.Message.ShouldBe(message);
        finding.Measured!.Unit.ShouldBe("degrees");
    }

    [Fact]
    public void A_line_too_short_for_its_tilt_to_show_is_level() =>
        Lettered.Of(new TextToSew("ill") { TiltDegrees = 0.8 }).Level(NotLevel).ShouldBeNull();

    [Theory]
    [InlineData(600, 0, null)]
    [InlineData(600, 1.7, null)]
    [InlineData(600, 2.2, Severity.Warn)]
    [InlineData(-600, 2.2, Severity.Warn)]
    [InlineData(600, 5, Severity.Note)]
    [InlineData(3000, 0.6, null)]
    public void An_arc_is_level_when_its_apex_lies_over_its_middle(int radius, double tilt, Severity? expected) =>
        Lettered.Of(Line with { Radius = radius, TiltDegrees = tilt }).Level(NotLevel).ShouldBe(expected);

    [Fact]
    public void The_apex_of_a_ring_of_letters_is_not_looked_for() =>
        Lettered.Of(new TextToSew("HARBOR LINE HARBOR") { XHeight = 50, Radius = 220, TiltDegrees = 8 }).Level(NotLevel).ShouldBeNull();

    [Fact]
    public void A_long_straight_line_near_the_brim_of_a_low_cap_will_look_bowed()
    {
        var finding = (Lettered.Of(Long) with { Job = Low }).Finding(Bow).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Note);
        finding.Message.ShouldBe("The straight line of 80.2 mm will look bowed up at its ends.");
        finding.Remedy!.Message.ShouldBe("Arc the line toward the brim, or keep it to 80 mm of width.");
    }

    [Theory]
    [InlineData("six-panel-unstructured-low", true)]
    [InlineData("six-panel-structured-mid", false)]
    [InlineData("six-panel-structured-high", false)]
    public void Only_low_and_soft_caps_bow(string style, bool noted) =>
        ((Lettered.Of(Long) with { Job = Job.Clean.On(style) }).Finding(Bow) is not null).ShouldBe(noted);

    [Fact]
    public void A_short_line_does_not_bow() => (Lettered.Of(Line) with { Job = Low }).Finding(Bow).ShouldBeNull();

    [Fact]
    public void An_arc_is_bowed_on_purpose() =>
        (Lettered.Of(Long with { Radius = -4000 }) with { Job = Low }).Finding(Bow).ShouldBeNull();

    [Fact]
    public void A_line_that_rises_on_purpose_is_not_judged() =>
        (Lettered.Of(Long with { TiltDegrees = 6 }) with { Job = Low }).Finding(Bow).ShouldBeNull();

    [Theory]
    [InlineData(71, true)]
    [InlineData(73, false)]
    public void Tall_letters_do_not_show_it(int xHeight, bool noted) =>
        ((Lettered.Of(Long with { XHeight = xHeight }) with { Job = Low }).Finding(Bow) is not null).ShouldBe(noted);

    [Theory]
    [InlineData(70, true)]
    [InlineData(73, false)]
    public void A_line_higher_up_the_crown_does_not_show_it(int above, bool noted) =>
        ((Lettered.On(draft => draft.Run(20, new TapePoint(-300, 0), new TapePoint(300, 0)), Long with { Middle = new(0, above) }) with { Job = Low })
            .Finding(Bow) is not null).ShouldBe(noted);
}
