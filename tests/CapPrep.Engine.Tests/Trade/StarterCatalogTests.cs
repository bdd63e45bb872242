using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using NetTopologySuite.Geometries;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class StarterCatalogTests
{
    private static readonly StarterCatalog Catalog = Embedded.StarterCatalog;

    public static TheoryData<string> Styles => [.. Catalog.CapStyles.Select(style => style.Id)];

    [Fact]
    public void The_starter_frames_machines_and_stations_are_the_named_ones()
    {
        Catalog.CapFrames.Select(frame => frame.Id).ShouldBe(["flat-clamp", "standard-180", "wide-270"]);
        Catalog.Machines.Select(machine => machine.Id).ShouldBe(["eight-head", "eighteen-head", "one-head"]);
        Catalog.Machines.Select(machine => machine.Value.Heads).ShouldBe([8, 18, 1]);
        Catalog.FramingStations.Select(station => station.Id).ShouldBe(["gauge-1", "gauge-2"]);
    }

    [Fact]
    public void The_shop_begins_with_resources_that_exist()
    {
        var defaults = Catalog.Shop.Value.Defaults;

        Catalog.Machines.ShouldContain(machine => machine.Id == defaults.Machine);
        Catalog.FramingStations.ShouldContain(station => station.Id == defaults.FramingStation);
        defaults.RuleBook.ShouldBe(HouseBook.BookId);
        defaults.ThreadWeightWt.ShouldBe(40);
    }

    [Fact]
    public void Machines_take_frames_that_exist_and_fit_into_their_field()
    {
        foreach (var machine in Catalog.Machines.Select(machine => machine.Value))
        {
            foreach (var frame in machine.CapFrames.Select(id => Catalog.CapFrames.Single(frame => frame.Id == id).Value))
            {
                frame.FieldMm.Width.ShouldBeLessThanOrEqualTo(machine.FieldMm.Width);
                frame.FieldMm.Height.ShouldBeLessThanOrEqualTo(machine.FieldMm.Height);
            }
        }
    }

    /// <summary>Frame fields by rows F04 and F05 (a distributor's table, grade C): height and width of the field.</summary>
    [Theory]
    [InlineData("wide-270", 356, 76.2)]
    [InlineData("standard-180", 290, 63.5)]
    public void Cap_frames_have_the_field_of_their_source(string id, double width, double height)
    {
        var frame = Catalog.CapFrames.Single(frame => frame.Id == id).Value;

        frame.FieldMm.Width.ShouldBe(width, 0.001);
        frame.FieldMm.Height.ShouldBe(height, 0.001);
        (frame.FieldMm.Bottom, frame.StrapTopMm, frame.SidesHeldBelowMm).ShouldBe((10, 6, 45));
        frame.PostsXMm.ShouldBe([-90, 90]);
    }

    /// <summary>The times of planning: 6 s a trim, 10 s a color change, one break in 25,000 stitches (house).</summary>
    [Fact]
    public void Machines_plan_with_the_house_times()
    {
        foreach (var machine in Catalog.Machines.Select(machine => machine.Value))
        {
            (machine.Stops.TrimSeconds, machine.Stops.ColorChangeSeconds, machine.Stops.BreaksPer100000Stitches, machine.Stops.BreakSeconds, machine.Stops.FrameSwapSecondsPerHead)
                .ShouldBe((6, 10, 4, 60, 20));
            (machine.Tape.TrimBy, machine.Tape.TrimCount, machine.Tape.MaxMoveMm, machine.Tape.Turn180)
                .ShouldBe((TrimBy.Jumps, 3, 12.1, TurnedBy.Machine));
            machine.BrimUpOnMachine.ShouldBeTrue();
        }
    }

    [Fact]
    public void A_front_without_a_seam_is_centered_less_surely_at_every_station()
    {
        var seamless = Catalog.CapStyles.Where(style => style.Value.CenterSeam is null).Select(style => style.Value).ToArray();

        seamless.Length.ShouldBe(4);
        foreach (var station in Catalog.FramingStations.Select(station => station.Value))
            seamless.ShouldAllBe(style => station.ScatterOn(style).OffsetXMm > station.Scatter.OffsetXMm);
    }

    /// <summary>90 mm wide and 40 mm high, 20 mm on a visor, at the nominal base: nothing may be in the way.</summary>
    [Theory]
    [MemberData(nameof(Styles))]
    public void A_usual_design_fits_every_front_as_it_comes(string id)
    {
        var style = Catalog.CapStyles.Single(style => style.Id == id).Value;
        var zone = style.ZoneOf(CapLocation.Front).ShouldNotBeNull();
        var frame = Catalog.CapFrames.Single(frame => frame.Id == "wide-270").Value;
        var height = style.Panels == 0 ? 20 : 40;
        var design = Rectangle(-45, zone.BrimClearance.NominalMm, 45, zone.BrimClearance.NominalMm + height);

        Outline(zone).Contains(design).ShouldBeTrue();
        Rectangle(frame.FieldMm.Left, frame.FieldMm.Bottom, frame.FieldMm.Right, frame.FieldMm.Top).Covers(design).ShouldBeTrue();
        ((double)height).ShouldBeLessThan(zone.Height.WarnAboveMm);
        (zone.BrimClearance.NominalMm + height).ShouldBeLessThan(zone.TopLineAt(45)!.HoldMm);
        style.Eyelets.ShouldAllBe(eyelet => Math.Abs(eyelet.XMm) > 45 || eyelet.YMm - eyelet.RadiusMm - 5 > zone.BrimClearance.NominalMm + height);
        frame.PostsXMm.ShouldAllBe(post => Math.Abs(post) - 45 >= 8);
    }

    /// <summary>Where a limit speaks, the outline must not speak first.</summary>
    [Theory]
    [MemberData(nameof(Styles))]
    public void Limits_are_passed_before_the_outline_is_left(string id)
    {
        foreach (var zone in Catalog.CapStyles.Single(style => style.Id == id).Value.Zones)
        {
            var reach = zone.Width.HoldAboveMm / 2;
            var outline = Outline(zone);

            outline.EnvelopeInternal.MaxX.ShouldBeGreaterThan(reach);
            outline.EnvelopeInternal.MinX.ShouldBeLessThan(-reach);
            outline.EnvelopeInternal.MaxY.ShouldBeGreaterThan(zone.BrimClearance.NominalMm + zone.Height.HoldAboveMm - 1);
            foreach (var point in zone.TopLine.Where(point => point.XMm <= reach))
                outline.Covers(Point.Empty.Factory.CreatePoint(new Coordinate(point.XMm, point.HoldMm))).ShouldBeTrue($"{zone.Location} {point}");
        }
    }

    [Fact]
    public void Halves_of_a_front_exist_where_a_seam_parts_it_and_lie_on_the_wearers_side()
    {
        foreach (var style in Catalog.CapStyles.Select(style => style.Value))
        {
            var left = style.ZoneOf(CapLocation.FrontLeft);
            var right = style.ZoneOf(CapLocation.FrontRight);

            (left is not null).ShouldBe(style.CenterSeam is not null);
            (right is not null).ShouldBe(style.CenterSeam is not null);
            if (left is null || right is null)
                continue;
            left.OriginXMm.ShouldNotBeNull().ShouldBeGreaterThan(0);
            right.OriginXMm.ShouldBe(-left.OriginXMm);
        }
    }

    private static Polygon Outline(Zone zone) => Point.Empty.Factory.CreatePolygon(
        [.. zone.OutlineMm.Append(zone.OutlineMm[0]).Select(point => new Coordinate(point.X, point.Y))]);

    private static Geometry Rectangle(double left, double bottom, double right, double top) =>
        Point.Empty.Factory.ToGeometry(new Envelope(left, right, bottom, top));
}
