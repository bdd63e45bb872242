using CapPrep.Engine.Briefs;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Tests.Checks;
using CapPrep.Engine.Tests.Checks.OnStitches;
using CapPrep.Engine.Tests.Sequence;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Briefs;

public sealed class BriefTests
{
    private static readonly Job Dense = RuleCases.Drafted(draft => draft.Grid(2, 2, 60, 60));

    [Fact]
    public void A_design_without_faults_needs_no_brief() => Job.Clean.Prepare().Brief.ShouldBeNull();

    [Fact]
    public void A_note_is_no_point()
    {
        var noted = RuleCases.Drafted(draft => draft.Grid(3, 4, 60, 60)).Prepare();
        var note = noted.Findings.Single(finding => finding.Rule == "stitch.dense");

        note.Severity.ShouldBe(Severity.Note);
        (noted.Brief?.Points ?? []).ShouldAllBe(point => point.Finding != note.Number);
    }

    [Fact]
    public void A_hold_is_a_point_that_must_change_and_says_where_how_and_why()
    {
        var prepared = Dense.Prepare();
        var hold = prepared.Findings.Single(finding => finding.Rule == "stitch.dense");
        hold.Severity.ShouldBe(Severity.Hold);

        var point = prepared.Brief!.Points.Single(point => point.Rule == "stitch.dense");

        point.MustChange.ShouldBeTrue();
        point.Number.ShouldBe(1);
        point.Finding.ShouldBe(hold.Number);
        point.How.ShouldBe(hold.Remedy!.Message);
        point.Why.ShouldNotBeEmpty();
        point.Places[0].Words.ShouldNotBeEmpty();
        point.Places[0].Stitches.ShouldNotBeNull();
        point.Places[0].Blocks.ShouldBe([1]);
    }

    [Fact]
    public void What_is_wanted_after_a_hold_does_not_even_warn()
    {
        var point = Dense.Prepare().Brief!.Points.Single(point => point.Rule == "stitch.dense");

        point.Wanted.ShouldBe(new BriefLimit(LimitIs.AtMost, 12, "holes per mm2"));
        point.How.ShouldContain("at most 12 holes per mm2");
    }

    [Fact]
    public void The_order_desk_is_told_the_limit_that_was_passed()
    {
        var finding = (Job.Clean with { Tape = Stitched.Seated(300, 650) }).Prepare().Findings.Single(one => one.Rule == "place.too-tall");

        finding.Wanted!.Value.ShouldBe(55);
        finding.Limit.Value.ShouldBe(63.5);
    }

    [Fact]
    public void The_order_desks_holds_are_no_points_of_the_digitizer()
    {
        var prepared = (Job.Clean with { Tape = Stitched.Seated(300, 650) }).Prepare();

        prepared.Verdict.ShouldBe(Verdict.ReturnToOrderDesk);
        (prepared.Brief?.Points ?? []).ShouldAllBe(point => point.Rule != "place.too-tall");
    }

    [Fact]
    public void Size_colors_and_counts_are_told_to_stay()
    {
        var prepared = Dense.Prepare();
        var brief = prepared.Brief!;

        brief.Keep.WidthMm.ShouldBe(prepared.Facts.Extents.Width / 10.0);
        brief.Keep.HeightMm.ShouldBe(prepared.Facts.Extents.Height / 10.0);
        brief.Keep.SizeMayChangeBy.ShouldBeEmpty();
        brief.Keep.Colors.ShouldBe(1);
        brief.Keep.Threads.ShouldHaveSingleItem().Name.ShouldBe("Navy");
        brief.Budget.Stitches.ShouldBe(prepared.Facts.Stitches);
        brief.Budget.Trims.ShouldBeGreaterThanOrEqualTo(prepared.Facts.Trims);
        brief.Budget.ColorChanges.ShouldBe(0);
    }

    [Fact]
    public void The_cap_is_told_as_the_digitizer_must_know_it()
    {
        var cap = Dense.Prepare().Brief!.Cap;

        cap.ShouldBe(new BriefCap(
            Job.Clean.Style!.Name, true, CrownStructure.Structured, CapLocation.Front, 127, 55, 13, Technique.Flat, 40, "held at the brim only"));
    }

    [Fact]
    public void Every_sentence_of_every_brief_has_at_most_15_words()
    {
        foreach (var (name, job) in RuleCases.All)
        {
            if (job.Prepare().Brief is not { } brief)
                continue;
            foreach (var sentence in brief.SendBack.Concat(brief.Points.SelectMany(point => Sentences(point.How))))
                sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length.ShouldBeLessThanOrEqualTo(15, $"{name}: {sentence}");
        }
    }

    [Fact]
    public void The_wanted_order_is_the_proposed_one_with_each_element_once()
    {
        var dense = new Draft().Grid(2, 2, 60, 60);
        foreach (var box in new[] { Sewn.Top, Sewn.Middle, Sewn.Base })
            dense = dense.Trim(new(box.Left, box.Bottom)).Stitch(new(box.Left, box.Bottom)).Sew(Fill.Of(box));
        var prepared = (Job.Clean with { Tape = dense.ToTape("TEST") }).Prepare();

        var steps = prepared.Brief!.WantedOrder;

        steps.SelectMany(step => step.Elements).ShouldBe(prepared.Order!.Order.Select(element => element + 1));
        steps.Select(step => step.Number).ShouldBe(Enumerable.Range(1, steps.Count));
        steps[0].StopBefore.ShouldBe(BriefStop.None);
    }

    [Fact]
    public void A_marked_stop_stands_in_the_wanted_order_with_what_is_done_there()
    {
        var draft = new Draft().Grid(2, 2, 60, 60)
            .ColorStop().Move(new(-300, 200)).Stitch(new(-300, 200)).Sew(Fill.Of(Sewn.Middle));
        var job = Job.Clean with
        {
            Tape = draft.ToTape("TEST"),
            Ticket = Job.Clean.Ticket with
            {
                Threads =
                [
                    new TicketThread { Block = 1, Name = "Navy" },
                    new TicketThread { Block = 2, Name = "Sand", Action = StopAction.PlacePatch },
                ],
            },
        };

        var stop = job.Prepare().Brief!.WantedOrder.Single(step => step.StopBefore == BriefStop.Deliberate);

        stop.Action.ShouldBe(StopAction.PlacePatch);
        stop.Block.ShouldBe(2);
    }

    private static IEnumerable<string> Sentences(string text) => text.Split(". ", StringSplitOptions.RemoveEmptyEntries);
}
