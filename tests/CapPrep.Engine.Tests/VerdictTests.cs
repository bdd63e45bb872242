using CapPrep.Engine.Checks;
using CapPrep.Engine.Tests.Checks;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Engine.Verdicts;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests;

public sealed class VerdictTests
{
    private static readonly Finding Any = Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 9 }).Finding("place.brim-clearance")!;

    [Theory]
    [InlineData(Severity.Hold, Asks.ReturnToOrderDesk, FindingState.Open, Verdict.ReturnToOrderDesk)]
    [InlineData(Severity.Hold, Asks.ReturnToDigitizer, FindingState.Open, Verdict.ReturnToDigitizer)]
    [InlineData(Severity.Hold, Asks.ReturnToOrderDesk, FindingState.Solved, Verdict.SewAsReceived)]
    [InlineData(Severity.Warn, Asks.Nothing, FindingState.Open, Verdict.SewAsReceived)]
    [InlineData(Severity.Note, Asks.Nothing, FindingState.Open, Verdict.SewAsReceived)]
    public void One_finding_decides(Severity severity, Asks asks, FindingState state, Verdict verdict) =>
        Judgment.Of([Any with { Severity = severity, Asks = asks, State = state }], canSew: true, isNewOrder: false).Verdict.ShouldBe(verdict);

    [Fact]
    public void The_order_desk_comes_before_the_digitizer_and_both_are_named()
    {
        var digitizer = Any with { Severity = Severity.Hold, Asks = Asks.ReturnToDigitizer, Remedy = null };
        var desk = digitizer with { Asks = Asks.ReturnToOrderDesk };

        var judgment = Judgment.Of([digitizer, desk], canSew: true, isNewOrder: false);

        judgment.Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
        judgment.Actors.ShouldBe([Actor.OrderDesk, Actor.Digitizer]);
        judgment.Reasons.Count.ShouldBe(2);
    }

    [Fact]
    public void What_sews_is_framed_and_run()
    {
        var prepared = Job.Clean.Prepare();

        prepared.Actors.ShouldBe([Actor.FramingStation, Actor.Operator]);
        prepared.VerdictReasons.ShouldBeEmpty();
        prepared.TapeToSew.ShouldNotBeNull();
    }

    [Fact]
    public void A_returned_design_leaves_no_tape_to_sew()
    {
        var prepared = (Job.Clean with { Tape = Stitched.Seated(100, 650) }).Prepare();

        prepared.Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
        prepared.TapeToSew.ShouldBeNull();
        prepared.VerdictReasons[0].Rule.ShouldBe("place.too-tall");
        prepared.VerdictReasons[0].Finding.ShouldBe(1);
        prepared.Actors.ShouldBe([Actor.OrderDesk]);
    }

    [Fact]
    public void An_unknown_article_goes_to_the_order_desk_with_the_nearest_styles()
    {
        var prepared = RuleCases.Unknown("QC-6S").Prepare();

        prepared.Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
        prepared.Seating.ShouldBeNull();
        var finding = prepared.Findings.ShouldHaveSingleItem();
        finding.Rule.ShouldBe("ticket.style");
        finding.Message.ShouldContain("six-panel-structured-mid, visor");
        finding.Places[0].Pointer.ShouldBe("/capSku");
    }

    [Fact]
    public void Without_a_style_tape_and_threads_are_judged_all_the_same()
    {
        var job = RuleCases.Unknown("X") with { Tape = Stitched.Colors(3) };

        job.Prepare().Findings.Select(finding => finding.Rule).ShouldBe(["ticket.threads", "ticket.style", "tape.repeated-points"]);
    }

    [Fact]
    public void A_book_that_switches_the_location_off_still_cannot_sew_what_lies_nowhere()
    {
        var book = new RuleBook { Id = "harbor", Name = "Harbor", Rules = [new RuleChange("ticket.location") { Off = true }] };
        var job = Job.Clean with { Book = book, Ticket = Job.Clean.Ticket with { Location = CapLocation.Visor } };

        job.Prepare().Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
    }

    [Theory]
    [InlineData(false, FirstCapIs.Required)]
    [InlineData(true, FirstCapIs.No)]
    public void Stitches_new_on_a_style_need_a_first_cap_and_approved_ones_none(bool sewnBefore, FirstCapIs expected) =>
        (Job.Clean with { SewnBefore = sewnBefore }).Prepare().FirstCap.Is.ShouldBe(expected);

    [Fact]
    public void Every_case_has_summaries_of_at_most_140_characters_for_those_who_act()
    {
        foreach (var (name, job) in RuleCases.All)
        {
            var prepared = job.Prepare();
            var summary = prepared.Summary;
            string?[] all = [summary.Lead, summary.Digitizer, summary.Framing, summary.Operator, summary.OrderDesk];

            all.OfType<string>().ShouldAllBe(text => text.Length > 0 && text.Length <= 140, name);
            (summary.OrderDesk is not null).ShouldBe(prepared.Actors.Contains(Actor.OrderDesk), name);
            (summary.Operator is not null).ShouldBe(prepared.Actors.Contains(Actor.Operator), name);
        }
    }

    [Fact]
    public void Summaries_say_what_to_do_in_plain_words()
    {
        var sews = Job.Clean.Prepare().Summary;
        var returned = (Job.Clean with { Tape = Stitched.Seated(100, 650) }).Prepare().Summary;

        sews.Lead.ShouldBe("Sew as received. No warns. First cap required.");
        sews.Framing.ShouldBe("Frame 48 caps: center seam on the mark. The design's base lies 13 mm above the brim seam.");
        sews.Operator.ShouldBe("Tape is upright: set the machine to turn for caps. Needles 3. Sew one cap first.");
        returned.Lead.ShouldStartWith("Do not sew: 2 points for the order desk. The design is 65 mm tall; this cap takes 63.5 mm there.");
        returned.OrderDesk.ShouldStartWith("Make the design at most 63.5 mm tall, or choose a taller cap.");
        returned.Operator.ShouldBeNull();
    }

    [Fact]
    public void The_lead_counts_and_names_only_the_holds_of_whoever_decides_first()
    {
        var digitizer = Any with { Severity = Severity.Hold, Asks = Asks.ReturnToDigitizer, Message = "Too dense." };
        var desk = digitizer with { Asks = Asks.ReturnToOrderDesk, Message = "Too tall." };

        Lead(digitizer, desk).ShouldBe("Do not sew: 1 point for the order desk. Too tall.");
        Lead(digitizer, digitizer).ShouldBe("Do not sew: 2 points for the digitizer. Too dense. Too dense.");
    }

    [Fact]
    public void A_return_without_a_hold_says_why_nothing_sews()
    {
        var book = new RuleBook { Id = "harbor", Name = "Harbor", Rules = [new RuleChange("ticket.location") { Off = true }] };
        var job = Job.Clean with { Book = book, Ticket = Job.Clean.Ticket with { Location = CapLocation.Visor } };

        job.Prepare().Summary.Lead.ShouldBe("Do not sew: no tape can be written for this cap and machine. The order desk decides.");
    }

    private static string Lead(params Finding[] findings) => Summaries.Of(
        Judgment.Of(findings, canSew: true, isNewOrder: false), findings, new FirstCap(FirstCapIs.No, []), null!, []).Lead;

    [Fact]
    public void A_sentence_too_long_is_shortened_at_a_word() =>
        Sentences.Fit(string.Join(' ', Enumerable.Repeat("seam", 40))).Length.ShouldBeInRange(120, Sentences.Longest);
}
