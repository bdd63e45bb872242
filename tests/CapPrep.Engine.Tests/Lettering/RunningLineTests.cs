using CapPrep.Engine.Lettering;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>Letters that are lines one stitch wide.</summary>
public sealed class RunningLineTests
{
    [Theory]
    [InlineData(Lines.LowerCase, 30)]
    [InlineData("Peach Road", 40)]
    [InlineData("ABCDEHILMNOPRSTUV014", 30)]
    [InlineData("harbor lane", 28)]
    public void They_are_found_letter_by_letter(string text, int height)
    {
        var (line, sewn) = Lines.One(new(text) { Work = LetterWork.Running, XHeight = height, Gap = 12 });

        line.Make.ShouldBe(LetterMake.Running);
        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.StrokeWidthMm.ShouldBe(0);
    }

    [Fact]
    public void They_are_found_on_an_arc()
    {
        var (line, sewn) = Lines.One(new("HOLD ME") { Work = LetterWork.Running, XHeight = 30, Radius = 500 });

        line.Glyphs.Count.ShouldBe(sewn.Count);
        line.Base.RadiusMm.ShouldNotBeNull().ShouldBe(50, 3);
    }

    [Fact]
    public void Joined_by_thread_they_are_one_connected_line()
    {
        var (line, _) = Lines.One(new("harbor") { Work = LetterWork.Running, XHeight = 40, Join = LetterJoin.Thread, Gap = 6 });

        line.IsConnected.ShouldBeTrue();
    }
}
