using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Revisions;

/// <summary>Points are one when rule and place are.</summary>
public sealed class PointMatchingTests
{
    private static readonly BoxMm Here = new(0, 0, 10, 10);

    [Theory]
    [InlineData(4.9, true)]
    [InlineData(5.1, false)]
    public void Boxes_that_share_half_of_the_smaller_one_are_one_place(double shift, bool same)
    {
        var match = Match([Then("stitch.dense", Here)], [Now("stitch.dense", Here with { Left = shift, Right = 10 + shift })]);

        match.StillOpen().Count.ShouldBe(same ? 1 : 0);
        match.Solved().Count.ShouldBe(same ? 0 : 1);
        match.New().Count.ShouldBe(same ? 0 : 1);
    }

    [Fact]
    public void A_small_place_inside_a_large_one_is_the_same_and_so_is_a_line()
    {
        Match([Then("stitch.dense", Here)], [Now("stitch.dense", new BoxMm(4, 4, 4, 6))]).StillOpen().ShouldHaveSingleItem().Before.ShouldBe(7);
        Match([Then("stitch.dense", new BoxMm(3, 3, 3, 3))], [Now("stitch.dense", new BoxMm(3, 3, 3, 3))]).New().ShouldBeEmpty();
    }

    [Fact]
    public void Another_rule_at_the_place_is_another_point()
    {
        var match = Match([Then("stitch.dense", Here)], [Now("stitch.stacked", Here)]);

        match.Solved().ShouldHaveSingleItem().Rule.ShouldBe("stitch.dense");
        match.New().ShouldHaveSingleItem().Rule.ShouldBe("stitch.stacked");
    }

    [Fact]
    public void Of_one_finding_some_places_may_be_solved_and_others_open()
    {
        var there = new BoxMm(40, 0, 50, 10);

        var match = Match([Then("stitch.dense", Here, there)], [Now("stitch.dense", there, new(80, 0, 90, 10))]);

        match.Solved().ShouldHaveSingleItem().BoxesMm.ShouldBe([Here]);
        match.StillOpen().ShouldHaveSingleItem().BoxesMm.ShouldBe([there]);
        match.New().ShouldHaveSingleItem().BoxesMm.ShouldBe([new(80, 0, 90, 10)]);
    }

    [Fact]
    public void Where_the_design_lies_elsewhere_on_the_cap_places_go_with_it()
    {
        var match = new PointMatching([Then("stitch.dense", Here)], [Now("stitch.dense", Here with { Bottom = 20, Top = 30 })], [], new(0, 20));

        match.StillOpen().Count.ShouldBe(1);
        match.Solved().ShouldBeEmpty();
    }

    [Fact]
    public void Notes_are_no_points_and_what_was_accepted_is_not_solved()
    {
        var note = Now("stitch.dense", Here) with { Severity = Severity.Note };
        Match([], [note]).New().ShouldBeEmpty();
        var word = new Acceptance { Decision = "dec_1", Rule = "stitch.dense", By = "Marta", At = default, Seen = new(Severity.Warn, 12, 13, "") };

        var match = new PointMatching([Then("stitch.dense", Here)], [], [new(Now("stitch.dense", Here), [word])], default);

        match.Solved().ShouldBeEmpty();
    }

    [Fact]
    public void A_list_that_was_cut_off_calls_nothing_new()
    {
        var cut = Then("stitch.dense", Here) with { Count = 80 };

        Match([cut], [Now("stitch.dense", new BoxMm(80, 0, 90, 10))]).New().ShouldBeEmpty();
    }

    [Fact]
    public void Points_of_the_ticket_are_one_by_their_field()
    {
        EarlierFinding then = new(7, "ticket.size", Severity.Hold, "Too large.", 1, Actor.OrderDesk, [new Place(PlaceKind.Ticket) { Pointer = "/expectedSize" }]);
        var now = Now("ticket.size", Here) with { Places = [new Place(PlaceKind.Ticket) { Pointer = "/expectedSize" }] };

        Match([then], [now]).StillOpen().ShouldHaveSingleItem().BoxesMm.ShouldBeEmpty();
    }

    private static PointMatching Match(EarlierFinding[] then, Finding[] now) => new(then, now, [], default);

    private static EarlierFinding Then(string rule, params BoxMm[] boxes) => new(7, rule, Severity.Warn, "Then.", boxes.Length, Actor.Digitizer, Places(boxes));

    private static Finding Now(string rule, params BoxMm[] boxes) => new()
    {
        Number = 3,
        Rule = rule,
        Severity = Severity.Warn,
        Count = boxes.Length,
        Message = "Now.",
        Limit = new() { Is = LimitIs.AtMost, Value = 12, Unit = "holes/mm2", Level = Severity.Warn, Kind = LimitKind.House, SetBy = new("house", 1) },
        Places = Places(boxes),
        Asks = Asks.Nothing,
    };

    private static Place[] Places(BoxMm[] boxes) => [.. boxes.Select(box => new Place(PlaceKind.CapFront) { BoxMm = box })];
}
