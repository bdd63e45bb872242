using Shouldly;
using Xunit;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>Sizes of single letters against what was drafted.</summary>
public sealed class GlyphTests
{
    [Theory]
    [InlineData(6)]
    [InlineData(10)]
    [InlineData(20)]
    public void The_bare_cloth_between_letters_is_what_was_left(int gap)
    {
        var (line, _) = Lines.One(new("HINT") { Gap = gap });

        foreach (var glyph in line.Glyphs.Take(3))
            glyph.GapMm.ShouldNotBeNull().ShouldBe(gap / 10.0, 0.15);
        line.Glyphs[^1].GapMm.ShouldBeNull();
    }

    [Fact]
    public void A_letter_that_leans_over_its_neighbor_has_the_gap_that_is_bare()
    {
        var (line, _) = Lines.One(new("LTLA") { Gap = 8 });

        line.Glyphs[0].GapMm.ShouldNotBeNull().ShouldBeGreaterThan(0.7);
    }

    [Theory]
    [InlineData(60, 12)]
    [InlineData(80, 16)]
    [InlineData(100, 22)]
    public void The_opening_of_a_ring_is_as_wide_as_drafted(int height, int stroke)
    {
        var (line, _) = Lines.One(new("coho") { XHeight = height, StrokeWidth = stroke });

        // A ring is 0.7 times as wide between the middles of its strokes as an x without one stroke is high.
        var opening = ((0.7 * (height - stroke)) - stroke) / 10;
        line.Glyphs[1].CounterMm.ShouldNotBeNull().ShouldBe(opening, 0.35);
        line.Glyphs[0].CounterMm.ShouldBeNull();
        line.Glyphs[2].CounterMm.ShouldBeNull();
    }

    [Fact]
    public void Letters_stand_where_they_were_sewn()
    {
        var (line, sewn) = Lines.One(new("Harbor lane"));

        foreach (var (glyph, letter) in line.Glyphs.Zip(sewn))
        {
            glyph.FromMm.ShouldBe(letter.From / 10, 0.7, letter.Letter.ToString());
            glyph.ToMm.ShouldBe(letter.To / 10, 0.7, letter.Letter.ToString());
        }
    }

    [Fact]
    public void A_dot_belongs_to_its_letter_and_does_not_make_it_taller()
    {
        var (line, _) = Lines.One(new("main"));

        line.Glyphs.Count.ShouldBe(4);
        line.Glyphs[2].HeightMm.ShouldBe(6, 0.3);
        line.Glyphs[2].Box.Height.ShouldBeGreaterThan(75);
    }

    [Fact]
    public void Every_letter_knows_its_stitches_and_its_element()
    {
        var (line, sewn) = Lines.One(new("HOLD"));

        foreach (var (glyph, letter) in line.Glyphs.Zip(sewn))
        {
            glyph.Strokes.ShouldAllBe(stroke => stroke.First >= letter.First && stroke.Last <= letter.Last);
            glyph.Elements.ShouldNotBeEmpty();
        }
    }

    [Fact]
    public void The_lowest_small_wide_line_is_the_tagline()
    {
        var draft = new Drafting.Draft();
        new Text("halls house lane") { XHeight = 40, StrokeWidth = 9 }.Sew(draft);
        new Text("HARBOR") { Middle = new(0, 200), XHeight = 110, StrokeWidth = 26 }.Sew(draft);

        Lines.Of(draft).Select(line => line.IsTagline).ShouldBe([true, false]);
    }

    [Fact]
    public void A_line_off_to_one_side_is_no_tagline()
    {
        var draft = new Drafting.Draft();
        new Text("harbor") { Middle = new(-200, 0), XHeight = 30, StrokeWidth = 8 }.Sew(draft);
        new Text("HARBOR") { Middle = new(0, 200), XHeight = 110, StrokeWidth = 26 }.Sew(draft);

        Lines.Of(draft)[0].IsTagline.ShouldBeFalse();
    }
}
