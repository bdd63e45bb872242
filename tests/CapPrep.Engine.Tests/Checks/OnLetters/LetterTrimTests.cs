using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

public sealed class LetterTrimTests
{
    private const string Rule = "stitch.small-letter-trim";

    private static readonly TextToSew Line = new("ocean") { XHeight = 50, StrokeWidth = 10, Gap = 10 };

    [Fact]
    public void Trims_between_small_neighbors_are_noted_with_both_letters()
    {
        var lettered = Lettered.Of(Line);

        var finding = lettered.Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Note);
        finding.Count.ShouldBe(4);
        finding.Message.ShouldBe("4 trims lie between small letters that stand less than 2 mm apart.");
        var glyphs = lettered.Subject().TextLines[0].Glyphs;
        finding.Places[0].BoxMm.ShouldBe(glyphs[0].Box.Union(glyphs[1].Box).ToMillimeters());
    }

    [Theory]
    [InlineData(20, 50, false)]
    [InlineData(19, 50, true)]
    [InlineData(10, 59, true)]
    [InlineData(10, 60, false)]
    public void Letters_farther_apart_or_larger_may_be_trimmed(int gap, int height, bool noted) =>
        (Lettered.Of(Line with { Gap = gap, XHeight = height }).Finding(Rule) is not null).ShouldBe(noted);

    [Fact]
    public void Letters_joined_by_thread_are_right() =>
        Lettered.Of(Line with { Join = LetterJoin.Thread }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void A_trim_to_a_letter_farther_off_is_needed() =>
        Lettered.Of(Line with { Order = [0, 2, 4, 1, 3] }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void A_line_sewn_from_its_middle_outward_needs_its_one_trim_back() =>
        Lettered.Of((Line with { Order = null }).CenterOut()).Finding(Rule)!.Count.ShouldBe(3);
}
