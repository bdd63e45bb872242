using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class HouseBookTests
{
    private static readonly HouseBook House = Embedded.HouseBook;

    [Fact]
    public void The_rows_stand_in_the_order_of_what_they_cost() => House.Rows.Select(row => row.Rule).ShouldBe([
        "place.outside-field", "place.travel-outside", "place.too-tall", "place.crown", "place.too-wide",
        "place.brim-clearance", "place.side-seam", "place.eyelet", "place.posts", "place.turned", "place.off-center",
        "place.eye-center", "place.not-level", "place.bow", "place.turns-away",
        "order.tagline-first", "order.bottom-up", "order.center-out", "order.text-line", "order.across-seam",
        "order.rows-downward", "order.ring", "order.back-again", "order.not-settled", "shift.disagrees",
        "border.late", "border.thin", "border.overlap",
        "seam.column-on-seam", "seam.small-text", "seam.fill-parallel", "seam.no-underlay", "seam.joint", "seam.trim-on-step",
        "foam.no-stop", "foam.narrow", "foam.open-end", "foam.wide", "foam.pitch", "foam.then-flat", "foam.fill", "foam.gap",
        "foam.style", "foam.across-seam",
        "applique.no-stop", "applique.edge", "applique.cover", "applique.early",
        "metallic.step", "metallic.pitch", "metallic.column",
        "stitch.short", "stitch.long", "stitch.column-narrow", "stitch.column-wide", "stitch.dense", "stitch.cover", "stitch.crowded",
        "stitch.stacked", "stitch.no-underlay", "stitch.no-tie", "stitch.loose-travel", "stitch.small-letter-trim",
        "stitch.heavy",
        "lettering.small", "lettering.counter", "lettering.gap",
        "ticket.threads", "ticket.needles", "ticket.size", "ticket.technique", "ticket.contrast", "ticket.machine",
        "ticket.quantity", "ticket.location", "ticket.style",
        "tape.cut-off", "tape.header-counts", "tape.header-extents", "tape.header-colors", "tape.no-end", "tape.part-record",
        "tape.after-end", "tape.empty-block", "tape.repeated-points", "tape.zero-stitches", "tape.unknown-bits",
        "tape.trims-unclear",
    ]);

    [Fact]
    public void The_house_allows_no_extra_color_and_starts_at_the_bottom_center() =>
        House.SewOrder.ShouldBe(new OrderSettings { ExtraColorChanges = 0, ExtraTrims = null, StartEndAtBottomCenter = true, BetterBy = 0.1 });

    [Fact]
    public void Holds_of_field_strap_posts_threads_and_cut_off_are_the_ones_that_stay() =>
        House.Rows.Where(row => row.HoldStaysAtLeastWarn).Select(row => row.Rule).ShouldBe([
            "place.outside-field", "place.travel-outside", "place.brim-clearance", "place.posts", "ticket.threads", "tape.cut-off",
        ]);

    [Fact]
    public void A_published_limit_names_a_published_row_and_the_others_name_none()
    {
        foreach (var row in House.Rows)
            (Embedded.PublishedSources.FirstPublished(row.Sources) is not null).ShouldBe(row.Kind == LimitKind.Published, row.Rule);
    }

    [Fact]
    public void What_can_hold_asks_somebody_and_says_what_to_do()
    {
        foreach (var row in House.Rows.Where(row => row.Limits.Any(limit => limit.Level == Severity.Hold)))
        {
            row.HoldAsks.ShouldNotBe(Asks.Nothing, row.Rule);
            row.Remedy.ShouldNotBeNull(row.Rule).Who.ShouldBe(row.HoldAsks == Asks.ReturnToDigitizer ? Actor.Digitizer : Actor.OrderDesk);
        }
    }

    [Fact]
    public void Only_a_rule_without_numbers_has_limits_without_one_but_for_the_warn_of_a_cut_off_tape() =>
        House.Rows
            .SelectMany(row => row.Limits.Where(limit => row.Is != LimitIs.None && limit.Value is null && limit.From is null).Select(limit => (row.Rule, limit.Level)))
            .ShouldBe([("tape.cut-off", Severity.Warn)]);

    [Fact]
    public void The_group_of_a_rule_begins_its_id() =>
        House.Rows.ShouldAllBe(row => row.Rule.StartsWith(row.Group + "."));
}
