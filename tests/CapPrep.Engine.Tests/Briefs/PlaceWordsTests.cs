using CapPrep.Engine.Briefs;
using CapPrep.Engine.Measures;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Briefs;

public sealed class PlaceWordsTests
{
    [Theory]
    [InlineData(-14, 16, -10, 18, "12 mm to the viewer's left of the seam, 4 mm above the design's base")]
    [InlineData(10, 13, 14, 13.4, "12 mm to the viewer's right of the seam, at the design's base")]
    [InlineData(-2, 20, 1, 24, "on the seam, 9 mm above the design's base")]
    [InlineData(-30, 13, 28, 23, "across the seam, 30 mm to the viewer's left to 28 mm to the right, 5 mm above the design's base")]
    public void A_place_is_told_from_the_seam_and_the_base(double left, double bottom, double right, double top, string words) =>
        PlaceWords.Of(new BoxMm(left, bottom, right, top), 13, hasSeam: true).ShouldBe(words);

    [Fact]
    public void Without_a_seam_it_is_told_from_the_middle() =>
        PlaceWords.Of(new BoxMm(10, 13, 14, 13), 13, hasSeam: false).ShouldStartWith("12 mm to the viewer's right of the middle");
}
