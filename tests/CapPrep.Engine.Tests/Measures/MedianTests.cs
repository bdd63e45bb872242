using CapPrep.Engine.Measures;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Measures;

public sealed class MedianTests
{
    [Fact]
    public void The_median_is_the_upper_middle_of_the_sorted_values() => Gen.Int[-50, 50].Array[1, 40].Sample(
        values => Median.Of(values).ShouldBe(values.Order().ElementAt(values.Length / 2)),
        iter: 500,
        seed: "0N0XIzNsQ0O2");
}
