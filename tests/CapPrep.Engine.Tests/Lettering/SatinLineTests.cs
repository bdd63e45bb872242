using CapPrep.Engine.Drafting;
using CapPrep.Engine.Lettering;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>Drafted satin letters come back with their number, their heights and their line.</summary>
public sealed class SatinLineTests
{
    [Theory]
    [InlineData(Lines.LowerCase, 60, 12)]
    [InlineData("peach river", 50, 10)]
    [InlineData("Harbor lane", 40, 9)]
    [InlineData("Hill Road", 90, 20)]
    [InlineData("Bug", 60, 14)]
    [InlineData("dot", 120, 30)]
    public void Lower_case_on_a_straight_line_is_found_letter_by_letter(string text, int height, int stroke)
    {
        var (line, sewn) = Lines.One(new(text) { XHeight = height, StrokeWidth = stroke });

        line.Make.ShouldBe(LetterMake.Satin);
        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.LetterHeightMm.ShouldBe(height / 10.0, 0.25);
        line.StrokeWidthMm.ShouldBe(stroke / 10.0, 0.15);
        line.Base.IsArc.ShouldBeFalse();
        line.Base.TiltDegrees.ShouldBe(0, 0.6);
        line.IsConnected.ShouldBeFalse();
        line.Sure.ShouldBeTrue();
    }

    [Theory]
    [InlineData("ABCDEHILMNOPRSTUV014", 60)]
    [InlineData("HARBOR", 40)]
    [InlineData("MILL 104", 100)]
    public void Capitals_have_one_height(string text, int height)
    {
        var drafted = new Text(text) { XHeight = height, StrokeWidth = height / 5 };

        var (line, sewn) = Lines.One(drafted);

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.LetterHeightMm.ShouldBe(drafted.CapHeight / 10.0, 0.3);
        line.CapHeightMm.ShouldBeNull();
        line.XHeightMm.ShouldBeNull();
    }

    [Fact]
    public void Two_heights_are_those_of_lower_case_and_of_capitals()
    {
        var drafted = new Text("Harbor Hills") { XHeight = 60 };

        var (line, _) = Lines.One(drafted);

        line.XHeightMm.ShouldNotBeNull().ShouldBe(6, 0.25);
        line.CapHeightMm.ShouldNotBeNull().ShouldBe(drafted.CapHeight / 10.0, 0.3);
    }

    [Theory]
    [InlineData(150)]
    [InlineData(-120)]
    [InlineData(50)]
    public void A_tilted_line_is_found_with_its_tilt(int tiltTenths)
    {
        var (line, sewn) = Lines.One(new("Harbor lane") { TiltDegrees = tiltTenths / 10.0 });

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.Base.TiltDegrees.ShouldBe(tiltTenths / 10.0, 1);
    }

    [Theory]
    [InlineData(600, "HARBOR")]
    [InlineData(-600, "HARBOR")]
    [InlineData(450, "Peach lane")]
    [InlineData(-900, "Peach lane")]
    [InlineData(1500, "HOLD THE LINE")]
    public void An_arc_is_found_with_its_radius(int radius, string text)
    {
        var (line, sewn) = Lines.One(new(text) { Radius = radius, XHeight = 50, StrokeWidth = 11 });

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.Base.RadiusMm.ShouldNotBeNull().ShouldBe(Math.Abs(radius) / 10.0, Math.Abs(radius) / 100.0);
        Math.Sign(line.Base.RiseMm).ShouldBe(Math.Sign(radius));
    }

    [Theory]
    [InlineData(12)]
    [InlineData(22)]
    [InlineData(-15)]
    public void Slanted_letters_are_found(int percent)
    {
        var (line, sewn) = Lines.One(new("Harbor lane") { SlantPercent = percent });

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.LetterHeightMm.ShouldBe(6, 0.3);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(6)]
    public void The_pitch_of_the_satin_does_not_matter(int pitch) =>
        Lines.One(new("Harbor lane") { Pitch = pitch }).Line.Glyphs.Count.ShouldBe(10);

    [Fact]
    public void The_order_of_sewing_does_not_matter()
    {
        var text = new Text("Harbor lane");

        var (sewnLeftToRight, _) = Lines.One(text);
        var (sewnOutward, _) = Lines.One(text.CenterOut());

        sewnOutward.Glyphs.Select(glyph => glyph.FromMm).ShouldBe(sewnLeftToRight.Glyphs.Select(glyph => glyph.FromMm));
        sewnOutward.LetterHeightMm.ShouldBe(sewnLeftToRight.LetterHeightMm);
    }

    [Fact]
    public void Three_lines_over_each_other_are_three_lines_from_the_lowest_up()
    {
        var draft = new Draft();
        new Text("Harbor") { Middle = new(0, 400) }.Sew(draft);
        new Text("lane") { Middle = new(0, 200) }.Sew(draft);
        new Text("Hills") { Middle = new(0, 0) }.Sew(draft);

        Lines.Of(draft).Select(line => line.Glyphs.Count).ShouldBe([5, 4, 6]);
    }

    [Fact]
    public void Letters_joined_by_thread_are_found_too() =>
        Lines.One(new("Harbor lane") { Join = LetterJoin.Thread }).Line.Glyphs.Count.ShouldBe(10);

    [Fact]
    public void Letters_of_split_columns_are_found()
    {
        var (line, sewn) = Lines.One(new("HOLD") { XHeight = 260, StrokeWidth = 78, Work = LetterWork.Split, Gap = 30 });

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.StrokeWidthMm.ShouldBe(7.8, 0.2);
    }
}
