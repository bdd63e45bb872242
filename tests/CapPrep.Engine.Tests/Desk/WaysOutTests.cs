using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Desk;

public sealed class WaysOutTests
{
    private static readonly IReadOnlyList<CapStyle> Catalog = [.. Embedded.StarterCatalog.CapStyles.Select(style => style.Value)];

    [Fact]
    public void A_design_that_fits_needs_no_way_out() => (Job.Clean with { OtherStyles = Catalog }).Prepare().WaysOut.ShouldBeNull();

    [Fact]
    public void A_design_that_only_warns_needs_none() => Tall(560).Prepare().WaysOut.ShouldBeNull();

    [Fact]
    public void A_design_too_tall_for_the_mid_crown_fits_none_lower()
    {
        var ways = Tall(640).Prepare().WaysOut.ShouldNotBeNull();

        ways.OtherStyles.Select(style => style.Id).ShouldNotContain("six-panel-structured-low");
        ways.OtherStyles.Select(style => style.Id).ShouldNotContain("six-panel-structured-mid");
    }

    [Fact]
    public void Every_style_that_is_offered_takes_the_design_without_a_hold_about_its_size()
    {
        var job = Tall(636);
        var ways = job.Prepare().WaysOut.ShouldNotBeNull();

        foreach (var style in ways.OtherStyles)
        {
            job.On(style.Id).Prepare().Findings
                .Where(finding => finding.Rule.StartsWith("place.", StringComparison.Ordinal))
                .ShouldAllBe(finding => finding.Severity != Severity.Hold, style.Id);
        }
    }

    [Fact]
    public void A_little_too_tall_may_be_scaled_and_the_first_cap_is_said()
    {
        var low = Job.Clean.WithFront(zone => zone with { Height = new TwoLimits(58, 60), TopLine = [] }) with { Tape = Stitched.Seated(300, 610) };

        var scaled = low.Prepare().WaysOut!.Scaled.ShouldNotBeNull();

        scaled.Scale.ShouldBe(0.95);
        scaled.HeightMm.ShouldBe(61 * 0.95, 0.001);
        scaled.Says.ShouldContain("95 %");
        scaled.Says.ShouldContain("Sew one cap first");
    }

    [Fact]
    public void Much_too_tall_is_made_anew_and_never_scaled()
    {
        var ways = Tall(700).Prepare().WaysOut.ShouldNotBeNull();

        ways.Scaled.ShouldBeNull();
        var size = ways.Redigitized.ShouldNotBeNull();
        size.HeightMm.ShouldBeLessThanOrEqualTo(55);
        size.HeightMm.ShouldBeGreaterThan(50);
        size.Says.ShouldBe($"Same cap, new digitizing at {size.WidthMm} x {size.HeightMm} mm.");
    }

    [Fact]
    public void Much_too_wide_counts_too()
    {
        var ways = (Job.Clean with { Tape = Stitched.Seated(1510, 200), OtherStyles = Catalog }).Prepare().WaysOut.ShouldNotBeNull();

        ways.Redigitized!.WidthMm.ShouldBeLessThanOrEqualTo(127);
    }

    private static Job Tall(int height) => Job.Clean with { Tape = Stitched.Seated(300, height), OtherStyles = Catalog };
}
