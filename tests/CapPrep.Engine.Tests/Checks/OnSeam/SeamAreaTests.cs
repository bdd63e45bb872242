using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.Cases;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnSeam;

/// <summary>Areas over the seam and beside it; limits are house, lengths in tape units.</summary>
public sealed class SeamAreaTests
{
    private static readonly Box Over = new(-100, 100, 100, 200);

    /// <summary>Rows end to the tenth of a millimeter; where cells lie does not matter.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    [InlineData(11)]
    [InlineData(-4)]
    public void Halves_overlap_by_what_their_needle_points_say(int overlap)
    {
        var finding = SeamCases.OnFrame(draft => draft.Halves(overlap)).Finding("seam.joint");

        (finding?.Measured?.Value).ShouldBe(overlap < 10 ? overlap / 10.0 : null);
    }

    /// <summary>What lies under later cover is ground: nobody sees its rows, and it needs no underlay.</summary>
    [Theory]
    [InlineData("seam.fill-parallel")]
    [InlineData("seam.no-underlay")]
    public void Ground_that_is_covered_later_is_not_judged(string rule)
    {
        SeamCases.OnFrame(draft => draft.Filled(Over, upright: true)).Finding(rule).ShouldNotBeNull();
        SeamCases.OnFrame(draft => draft.Filled(Over, upright: true).Filled(Over, upright: false, underlay: 0)).Finding(rule).ShouldBeNull();
    }

    /// <summary>A line on each side of the seam, 4 mm from it, then rows without underlay of their own.</summary>
    [Theory]
    [InlineData(true, null)]
    [InlineData(false, Severity.Warn)]
    public void Lines_on_both_sides_carry_a_fill_together(bool both, Severity? expected)
    {
        var finding = SeamCases.OnFrame(draft => (both ? draft.LineAt(-40) : draft).LineAt(40).Filled(Over, upright: false, underlay: 0))
            .Finding("seam.no-underlay");

        (finding?.Severity).ShouldBe(expected);
    }
}

/// <summary>What lies under an area.</summary>
file static class UnderDrafts
{
    /// <summary>An upright line 8 mm long.</summary>
    internal static Draft LineAt(this Draft draft, int x) => draft.Trim(new(x, 110)).Stitch(new(x, 110)).Run(25, [new(x, 110), new(x, 190)]);
}
