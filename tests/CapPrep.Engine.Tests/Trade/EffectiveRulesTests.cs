using CapPrep.Engine.Checks;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class EffectiveRulesTests
{
    private static readonly HouseBook House = Embedded.HouseBook;
    private static readonly VersionedId HouseId = new("house", House.Version);
    private static readonly VersionedId HarborId = new("harbor", 4);
    private static readonly CapFrame Frame = Embedded.StarterCatalog.CapFrames.Single(frame => frame.Id == "wide-270").Value;
    private static readonly Machine Machine = Embedded.StarterCatalog.Machines.Single(machine => machine.Id == "eight-head").Value;
    private static readonly Zone Front = Style("six-panel-structured-mid").ZoneOf(CapLocation.Front)!;

    [Fact]
    public void Without_a_book_every_limit_is_the_houses()
    {
        var rules = EffectiveRules.For(House, null, null, null, CapLocation.Front);

        rules.Book.ShouldBe(HouseId);
        rules.SewOrder.ShouldBe(House.SewOrder);
        rules.Rows.Select(rule => rule.Row).ShouldBe(House.Rows);
        rules.Rows.SelectMany(rule => rule.Limits).ShouldAllBe(limit => limit.SetBy == HouseId);
    }

    [Theory]
    [InlineData("place.too-tall", Severity.Warn, 55)]
    [InlineData("place.too-tall", Severity.Hold, 63.5)]
    [InlineData("place.too-wide", Severity.Hold, 150)]
    [InlineData("place.crown", Severity.Warn, 68)]
    [InlineData("place.brim-clearance", Severity.Note, 12.7)]
    [InlineData("place.brim-clearance", Severity.Warn, 10)]
    [InlineData("place.brim-clearance", Severity.Hold, 8)]
    [InlineData("ticket.needles", Severity.Hold, 12)]
    [InlineData("place.posts", Severity.Hold, 8)]
    public void A_limit_takes_its_number_from_the_row_or_the_catalog(string rule, Severity level, double expected) =>
        HouseRule(rule).LimitFor(level, Front, Frame, Machine).ShouldBe((expected, HouseId));

    [Theory]
    [InlineData(0, 68, 76)]
    [InlineData(-30, 65, 73)]
    [InlineData(40, 62.5, 70.5)]
    [InlineData(-60, 56, 64)]
    [InlineData(90, 52, 60)]
    public void The_top_line_falls_away_to_both_sides(double x, double warn, double hold)
    {
        HouseRule("place.crown").LimitFor(Severity.Warn, Front, Frame, Machine, x)!.Value.Value.ShouldBe(warn, 1e-9);
        HouseRule("place.crown").LimitFor(Severity.Hold, Front, Frame, Machine, x)!.Value.Value.ShouldBe(hold, 1e-9);
    }

    [Fact]
    public void A_limit_without_a_number_there_is_none()
    {
        HouseRule("place.too-tall").LimitFor(Severity.Note, Front, Frame).ShouldBeNull();
        HouseRule("place.too-tall").LimitFor(Severity.Warn, null, Frame).ShouldBeNull();
        HouseRule("ticket.needles").LimitFor(Severity.Hold, null, Frame).ShouldBeNull();
        HouseRule("ticket.style").LimitFor(Severity.Hold, null, Frame).ShouldBeNull();
        HouseRule("place.crown").LimitFor(Severity.Warn, Style("visor").ZoneOf(CapLocation.Front)! with { TopLine = [] }, Frame).ShouldBeNull();
    }

    [Fact]
    public void A_rule_without_numbers_has_the_severity_that_is_switched_on()
    {
        var book = Book(Change("ticket.quantity", new LimitChange(Severity.Hold, null, Off: true)));
        var rules = EffectiveRules.For(House, (book, 4), null, null, CapLocation.Front);

        HouseRule("ticket.threads").SeverityFor(Severity.Hold).ShouldBe((Severity.Hold, HouseId));
        HouseRule("ticket.threads").SeverityFor(Severity.Note).ShouldBe((Severity.Note, HouseId));
        rules.Find("ticket.quantity")!.SeverityFor(Severity.Hold).ShouldBe((Severity.Note, HouseId));
        HouseRule("ticket.style").SeverityFor(Severity.Warn).ShouldBeNull();
    }

    [Fact]
    public void A_book_changes_what_it_lists_and_nothing_else()
    {
        var book = Book(Change("place.too-tall", new LimitChange(Severity.Warn, 57.2, Off: false))) with
        {
            SewOrder = new OrderSettings { ExtraTrims = 5 },
        };
        var rules = EffectiveRules.For(House, (book, 4), null, null, CapLocation.Front);
        var tall = rules.Find("place.too-tall").ShouldNotBeNull();

        rules.Book.ShouldBe(HarborId);
        tall.LimitFor(Severity.Warn, Front, Frame).ShouldBe((57.2, HarborId));
        tall.LimitFor(Severity.Hold, Front, Frame).ShouldBe((63.5, HouseId));
        rules.SewOrder.ShouldBe(new OrderSettings { ExtraColorChanges = 0, ExtraTrims = 5, StartEndAtBottomCenter = true, BetterBy = 0.1 });
    }

    [Fact]
    public void A_rule_that_is_off_is_not_found_until_an_override_switches_it_on()
    {
        var book = Book(new RuleChange("place.eyelet") { Off = true }) with
        {
            Overrides = [Override(new RuleChange("place.eyelet") { Off = false }) with { Customer = "harbor-league" }],
        };

        EffectiveRules.For(House, (book, 4), null, null, CapLocation.Front).Find("place.eyelet").ShouldBeNull();
        EffectiveRules.For(House, (book, 4), "harbor-league", null, CapLocation.Front).Find("place.eyelet").ShouldNotBeNull();
    }

    [Theory]
    [InlineData(null, null, CapLocation.Front, 57)]
    [InlineData("harbor-league", null, CapLocation.Front, 58)]
    [InlineData("harbor-league", "visor", CapLocation.Front, 59)]
    [InlineData("harbor-league", "visor", CapLocation.Back, 60)]
    [InlineData("other", "visor", CapLocation.Back, 60)]
    [InlineData("other", "visor", CapLocation.Left, 57)]
    public void Matching_overrides_lie_on_top_of_each_other_in_their_order(string? customer, string? style, CapLocation location, double warn)
    {
        var book = Book(Tall(57)) with
        {
            Overrides =
            [
                Override(Tall(58)) with { Customer = "harbor-league" },
                Override(Tall(59)) with { Customer = "harbor-league", CapStyle = "visor" },
                Override(Tall(60)) with { Location = CapLocation.Back },
            ],
        };

        EffectiveRules.For(House, (book, 4), customer, style, location).Find("place.too-tall")!
            .LimitFor(Severity.Warn, Front, Frame).ShouldBe((warn, HarborId));
    }

    [Fact]
    public void What_held_at_the_strap_still_warns_when_a_book_moves_the_hold()
    {
        var book = Book(Change("place.brim-clearance", new(Severity.Warn, 5, Off: false), new(Severity.Hold, 4, Off: false)));
        var rule = EffectiveRules.For(House, (book, 4), null, null, CapLocation.Front).Find("place.brim-clearance").ShouldNotBeNull();

        rule.LimitFor(Severity.Warn, Front, Frame).ShouldBe((8, HouseId));
        rule.LimitFor(Severity.Hold, Front, Frame).ShouldBe((4, HarborId));
    }

    [Fact]
    public void A_rule_that_must_stay_cannot_be_lost_even_by_a_book_that_was_never_checked()
    {
        var book = Book(new RuleChange("place.posts") { Off = true, Limits = [new(Severity.Hold, null, Off: true)] });
        var rule = EffectiveRules.For(House, (book, 4), null, null, CapLocation.Front).Find("place.posts").ShouldNotBeNull();

        rule.LimitFor(Severity.Warn, Front, Frame).ShouldBe((8, HouseId));
    }

    private static EffectiveRule HouseRule(string rule) =>
        EffectiveRules.For(House, null, null, null, CapLocation.Front).Find(rule).ShouldNotBeNull();

    private static CapStyle Style(string id) => Embedded.StarterCatalog.CapStyles.Single(style => style.Id == id).Value;

    private static RuleBook Book(params RuleChange[] changes) => new() { Id = "harbor", Name = "Harbor", Rules = changes };

    private static RuleChange Change(string rule, params LimitChange[] limits) => new(rule) { Limits = limits };

    private static RuleChange Tall(double warn) => Change("place.too-tall", new LimitChange(Severity.Warn, warn, Off: false));

    private static RuleOverride Override(params RuleChange[] changes) => new() { Rules = changes };
}
