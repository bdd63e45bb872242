using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Sheets;

public class TextFitTests
{
    [Fact]
    public void A_letter_with_a_combining_mark_is_measured_as_one_letter()
    {
        var composed = Shaper.Shape("\u00E9", SheetFont.Regular);
        var combined = Shaper.Shape("e\u0301", SheetFont.Regular);
        combined.Glyphs.ShouldHaveSingleItem().Id.ShouldBe(composed.Glyphs[0].Id);
        TextFit.Width("e\u0301", SheetFont.Regular, 353).ShouldBe(TextFit.Width("\u00E9", SheetFont.Regular, 353));
    }

    [Fact]
    public void A_text_that_fits_keeps_its_size() =>
        TextFit.Line("Heron crest", SheetFont.Bold, 500, 300, 10000).ShouldBe(
            new FittedLine("Heron crest", 500, TextFit.Width("Heron crest", SheetFont.Bold, 500), false));

    [Fact]
    public void A_text_that_is_a_little_too_long_gets_smaller()
    {
        var line = TextFit.Line("Heron rowing club, second eight", SheetFont.Regular, 500, 300, 6000);
        line.Text.ShouldBe("Heron rowing club, second eight");
        line.Size.ShouldBeInRange(300, 499);
        line.Width.ShouldBeLessThanOrEqualTo(6000);
        line.Cut.ShouldBeFalse();
    }

    [Fact]
    public void A_text_that_is_far_too_long_is_cut_where_it_can_be_seen()
    {
        var line = TextFit.Line(new string('W', 4000), SheetFont.Regular, 500, 300, 6000);
        line.Cut.ShouldBeTrue();
        line.Size.ShouldBe(300);
        line.Text.ShouldEndWith("…");
        line.Width.ShouldBeLessThanOrEqualTo(6000);
    }

    [Fact]
    public void No_line_is_ever_wider_than_its_room() => Gen.String.Select(Gen.Int[300, 9000], Gen.Int[100, 900]).Sample(
        (text, width, size) =>
        {
            TextFit.Line(text, SheetFont.Regular, size, size / 2, Math.Max(width, size * 2)).Width.ShouldBeLessThanOrEqualTo(Math.Max(width, size * 2));
            foreach (var line in TextFit.Wrap(text, SheetFont.Bold, size, Math.Max(width, size * 2), 4))
                line.Width.ShouldBeLessThanOrEqualTo(Math.Max(width, size * 2));
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void Wrapping_loses_no_word()
    {
        const string text = "Hands near needles, strap or frame only when the machine stands still and nobody else can start it.";
        var lines = TextFit.Wrap(text, SheetFont.Regular, 353, 4000, 40);
        lines.Count.ShouldBeGreaterThan(3);
        string.Join(' ', lines.Select(line => line.Text)).ShouldBe(text);
    }

    [Fact]
    public void Wrapping_into_too_few_lines_cuts_the_last()
    {
        var lines = TextFit.Wrap(new string('a', 30) + " " + new string('b', 500), SheetFont.Regular, 353, 3000, 2);
        lines.Count.ShouldBe(2);
        lines[1].Text.ShouldEndWith("…");
    }

    [Theory]
    [InlineData("ab\u202Egnp.exe", "ab\uFFFDgnp.exe")]
    [InlineData("a\u0000\u001Bb", "a\uFFFD\uFFFDb")]
    [InlineData("a\tb\nc\u2028d", "a b c d")]
    [InlineData("a\u00ADb\u200Dc\uFE0F", "abc")]
    [InlineData("\u2066x\u2069", "\uFFFDx\uFFFD")]
    public void What_could_hide_or_turn_a_text_is_made_visible(string text, string clean) =>
        SafeText.Clean(text).ShouldBe(clean);

    [Fact]
    public void Half_a_character_is_made_visible() => SafeText.Clean("a\uD800b").ShouldBe("a\uFFFDb");

    [Fact]
    public void A_tower_of_marks_is_cut_down() =>
        SafeText.Clean("e" + new string('\u0301', 200) + "x").ShouldBe("e\u0301\u0301\u0301x");

    [Fact]
    public void Cleaning_twice_changes_nothing_more() => Gen.String.Sample(
        text => SafeText.Clean(SafeText.Clean(text)).ShouldBe(SafeText.Clean(text)), iter: 300, threads: 1);

    [Theory]
    [InlineData(13, "1/2 in")]
    [InlineData(25.4, "1 in")]
    [InlineData(55.6, "2 3/16 in")]
    [InlineData(0, "0 in")]
    public void Inches_are_given_to_the_nearest_sixteenth(double mm, string inches) => Lengths.Inches(mm).ShouldBe(inches);
}
