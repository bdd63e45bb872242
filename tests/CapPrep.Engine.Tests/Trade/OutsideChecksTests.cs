using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

/// <summary>Catalog figures against arithmetic and formulas from outside.</summary>
public sealed class OutsideChecksTests
{
    public static TheoryData<string> Styles => [.. Embedded.StarterCatalog.CapStyles.Select(style => style.Id)];

    /// <summary>Radius of a circle (row A18, arithmetic): 580 / 2 pi = 92.3 mm.</summary>
    [Theory]
    [MemberData(nameof(Styles))]
    public void The_front_is_seen_as_the_round_of_its_circumference(string id)
    {
        var style = Style(id);

        style.FrontView.RadiusMm.ShouldBe(style.CircumferenceMm / (2 * Math.PI), 0.05);
    }

    /// <summary>Six equal panels of a 58 cm cap (row A16, arithmetic): 580 / 6 = 96.7 mm.</summary>
    [Theory]
    [InlineData("six-panel-structured-mid")]
    [InlineData("six-panel-structured-low")]
    [InlineData("six-panel-structured-high")]
    [InlineData("six-panel-unstructured-low")]
    public void A_side_seam_of_a_six_panel_cap_begins_one_panel_from_the_center_seam(string id)
    {
        var style = Style(id);

        style.Seams.Where(seam => seam.Kind == "side")
            .ShouldAllBe(seam => Math.Abs(Math.Abs(seam.LineMm[0].X) - style.CircumferenceMm / style.Panels) < 0.05);
    }

    /// <summary>
    /// US hat size = circumference in inches / pi, to the nearest 1/8 (hat makers' size pages, rows A19 and A20, grade
    /// D): a 58 cm head is 7.268, so 7 1/4 (worked example of the same pages: 7.27).
    /// </summary>
    [Theory]
    [MemberData(nameof(Styles))]
    public void The_starter_caps_are_a_seven_and_a_quarter(string id)
    {
        var size = Style(id).CircumferenceMm / 25.4 / Math.PI;

        size.ShouldBe(7.268, 0.0005);
        (Math.Round(size * 8) / 8).ShouldBe(7.25);
    }

    /// <summary>One hat size is pi/8 inch of circumference (row A25, arithmetic): 9.97 mm.</summary>
    [Fact]
    public void The_bounds_of_a_circumference_take_every_fitted_size_and_more()
    {
        const double step = Math.PI / 8 * 25.4;
        step.ShouldBe(9.97, 0.005);

        // Fitted caps are sold from 6 7/8 to 8 (row A24, a seller's chart, grade D).
        foreach (var size in Enumerable.Range(0, 10).Select(index => 6.875 + index / 8.0))
            TradeReader.CapStyle(Edited.Style().With("/circumferenceMm", FormattableString.Invariant($"{size * 8 * step:0.0}"))).Violations.ShouldBeEmpty();
    }

    private static CapStyle Style(string id) => Embedded.StarterCatalog.CapStyles.Single(style => style.Id == id).Value;
}
