using CapPrep.Engine.Measures;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Measures;

/// <summary>
/// Against the test pairs of Sharma, Wu, Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes,
/// Supplementary Test Data, and Mathematical Observations", Color Research and Application 30 (2005), table 1; the
/// figures are written down from memory.
/// </summary>
public sealed class ColorDifferenceTests
{
    [Theory]
    [InlineData(50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425)]
    [InlineData(50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615)]
    [InlineData(50, 2.8361, -74.0200, 50, 0, -82.7485, 3.4412)]
    [InlineData(50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0000)]
    [InlineData(50, 0, 0, 50, -1, 2, 2.3669)]
    [InlineData(50, 2.4900, -0.0010, 50, -2.4900, 0.0009, 7.1792)]
    [InlineData(50, 2.4900, -0.0010, 50, -2.4900, 0.0011, 7.2195)]
    [InlineData(50, -0.0010, 2.4900, 50, 0.0009, -2.4900, 4.8045)]
    [InlineData(50, -0.0010, 2.4900, 50, 0.0011, -2.4900, 4.7461)]
    [InlineData(50, 2.5, 0, 50, 0, -2.5, 4.3065)]
    [InlineData(50, 2.5, 0, 73, 25, -18, 27.1492)]
    [InlineData(50, 2.5, 0, 61, -5, 29, 22.8977)]
    [InlineData(50, 2.5, 0, 56, -27, -3, 31.9030)]
    [InlineData(50, 2.5, 0, 58, 24, 15, 19.4535)]
    [InlineData(60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644)]
    [InlineData(63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630)]
    [InlineData(61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731)]
    [InlineData(35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645)]
    [InlineData(22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373)]
    [InlineData(36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146)]
    [InlineData(90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441)]
    [InlineData(90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381)]
    [InlineData(6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377)]
    [InlineData(2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082)]
    public void The_published_pairs_differ_as_published(double l1, double a1, double b1, double l2, double a2, double b2, double difference)
    {
        var (one, other) = (new LabColor(l1, a1, b1), new LabColor(l2, a2, b2));

        ColorDifference.Between(one, other).ShouldBe(difference, 0.00006);
        ColorDifference.Between(other, one).ShouldBe(difference, 0.00006);
    }

    /// <summary>D65 white and the primaries of IEC 61966-2-1 in L*a*b*; from memory.</summary>
    [Theory]
    [InlineData("#FFFFFF", 100, 0, 0)]
    [InlineData("#000000", 0, 0, 0)]
    [InlineData("#FF0000", 53.24, 80.09, 67.20)]
    [InlineData("#00FF00", 87.73, -86.18, 83.18)]
    [InlineData("#0000FF", 32.30, 79.19, -107.86)]
    [InlineData("#808080", 53.59, 0, 0)]
    public void Screen_values_have_their_known_places(string rgb, double l, double a, double b)
    {
        var color = LabColor.Of(rgb);

        color.L.ShouldBe(l, 0.02);
        color.A.ShouldBe(a, 0.03);
        color.B.ShouldBe(b, 0.03);
    }

    [Fact]
    public void A_color_does_not_differ_from_itself() => ColorDifference.Between("#1B2A5C", "#1B2A5C").ShouldBe(0, 1e-9);

    [Fact]
    public void Own_curves_equal_those_of_the_runtime()
    {
        for (var degrees = -720.0; degrees <= 720; degrees += 7.3)
        {
            Trig.Cosine(degrees).ShouldBe(Math.Cos(degrees * Math.PI / 180), 1e-12);
            Trig.Sine(degrees).ShouldBe(Math.Sin(degrees * Math.PI / 180), 1e-12);
        }

        for (var power = -30.0; power <= 0; power += 0.37)
            Trig.Exponential(power).ShouldBe(Math.Exp(power), 1e-11);
        for (var value = 0.0001; value < 2; value *= 1.7)
            Trig.Root(value, 5).ShouldBe(Math.Pow(value, 0.2), 1e-11);
    }
}
