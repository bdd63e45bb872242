using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class HouseValuesTests
{
    public static TheoryData<string> Styles => [.. HouseValues.All.Select(values => values.Id)];

    [Fact]
    public void The_starter_catalog_has_exactly_the_eight_styles() =>
        Embedded.StarterCatalog.CapStyles.Select(style => style.Id)
            .ShouldBe(HouseValues.All.Select(values => values.Id).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Styles))]
    public void The_crown_brim_and_seams_are_the_house_values(string id)
    {
        var (house, style) = Pair(id);

        style.CrownHeightMm.ShouldBe(house.CrownMm);
        style.CircumferenceMm.ShouldBe(580);
        style.Brim.BowMm.ShouldBe(house.BrimBowMm);
        style.Stiffener.ShouldNotBeNull().ShouldStartWith(house.Stiffener);
        (style.CenterSeam is { } seam ? (seam.StepMm, seam.GrooveMm, seam.Layers) : ((double, double, int)?)null).ShouldBe(house.Seam);
        style.Seams.Any(line => line.Kind == "center").ShouldBe(house.Seam is not null);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Side_seams_and_eyelets_lie_where_the_house_values_say(string id)
    {
        var (house, style) = Pair(id);
        var sides = style.Seams.Where(seam => seam.Kind == "side").ToArray();

        sides.Length.ShouldBe(house.SideX is null ? 0 : 2);
        foreach (var (side, sign) in sides.Zip([-1, 1]))
        {
            side.LineMm.ShouldContain(new PointMm(sign * house.SideX!.Value.At15, 15));
            side.LineMm.ShouldContain(new PointMm(sign * house.SideX!.Value.At50, 50));
            side.LineMm.ShouldContain(new PointMm(sign * house.SideX!.Value.At75, 75));
        }

        style.Eyelets.ShouldBe(house.Eyelet is { } eyelet ? [new(-eyelet.X, eyelet.Y, 4), new(eyelet.X, eyelet.Y, 4)] : []);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void The_front_zone_has_the_house_limits(string id)
    {
        var (house, style) = Pair(id);
        var front = style.ZoneOf(CapLocation.Front).ShouldNotBeNull();

        front.BrimClearance.ShouldBe(new BrimClearance(house.Base.Nominal, house.Base.Floor));
        front.Height.ShouldBe(new TwoLimits(house.Height.Warn, house.Height.Hold));
        front.Width.ShouldBe(new TwoLimits(house.Width.Warn, house.Width.Hold));
        front.BorderMm.ShouldBe(1.6);
        front.TopLine.ShouldBe([
            new(0, house.Top.Warn, house.Top.Hold),
            new(30, house.Top.Warn - house.Falls.At30, house.Top.Hold - house.Falls.At30),
            new(50, house.Top.Warn - house.Falls.At50, house.Top.Hold - house.Falls.At50),
            new(70, house.Top.Warn - house.Falls.At70, house.Top.Hold - house.Falls.At70),
        ]);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Sides_and_back_are_sewn_where_the_house_says(string id)
    {
        var (house, style) = Pair(id);

        foreach (var zone in new[] { style.ZoneOf(CapLocation.Left), style.ZoneOf(CapLocation.Right) })
        {
            (zone is null ? ((double, double)?)null : (zone.Width.WarnAboveMm, zone.Height.WarnAboveMm)).ShouldBe(house.Side);
            if (zone is not null)
                zone.BrimClearance.NominalMm.ShouldBe(13);
        }

        var back = style.ZoneOf(CapLocation.Back);
        (back is not null).ShouldBe(house.Back);
        (back?.Width.HoldAboveMm, back?.Height.HoldAboveMm, back?.ArchRadiusMm).ShouldBe(house.Back ? (64, 38, 42) : (null, null, null));
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Sewing_and_framing_are_the_house_values(string id)
    {
        var (house, style) = Pair(id);

        (style.Sewing.SpeedSpm, style.Sewing.FoamSpeedSpm, style.Sewing.MetallicSpeedSpm)
            .ShouldBe((house.Speed, house.FoamSpeed, house.MetallicSpeed));
        style.Sewing.Needle.ShouldStartWith(house.Needle);
        style.Sewing.Soften.ShouldBe(house.Soften);
        style.Sewing.BackingPieces.ShouldBe(house.BackingPieces);
        (style.Sewing.BackingWidthMm, style.Sewing.BackingHeightMm).ShouldBe((house.Strip.Width, house.Strip.Height));
        (style.Framing.SecondsPerCap, style.Framing.ScatterMm).ShouldBe((house.FramingSeconds, house.Scatter));
        style.Framing.CenterFoundBy.ShouldStartWith(house.CenterFoundBy);
        style.MayBeWorkedWith.ShouldBe(house.Group);
        style.Techniques.Select(Words<Technique>.Standard.Of).ShouldBe(house.Techniques.Split(' '));
        style.FoamHeightMm.ShouldBe(house.FoamHeightMm);
    }

    /// <summary>A foam speed belongs to the styles that take foam.</summary>
    [Theory]
    [MemberData(nameof(Styles))]
    public void A_style_without_foam_has_no_speed_over_foam(string id)
    {
        var style = Pair(id).Style;

        style.Techniques.Contains(Technique.Foam).ShouldBe(style.Sewing.FoamSpeedSpm is not null);
    }

    private static (HouseValues House, CapStyle Style) Pair(string id) => (
        HouseValues.All.Single(values => values.Id == id),
        Embedded.StarterCatalog.CapStyles.Single(style => style.Id == id).Value);
}
