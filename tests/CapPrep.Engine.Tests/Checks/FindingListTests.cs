using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks;

public sealed class FindingListTests
{
    /// <summary>A row of spikes that reach over the crown, with stitches between them that do not.</summary>
    private static readonly Job Spikes = Job.Clean with { Tape = Stitched.Along([.. Enumerable.Range(0, 51).Select(Spike)]) };

    [Fact]
    public void Findings_are_numbered_open_first_worst_first_then_by_the_order_of_the_rules()
    {
        var job = RuleCases.All["place.travel-outside_fail"] with { Ticket = Job.Clean.Ticket with { Threads = null, Blanks = 40 } };

        var findings = job.Prepare().Findings;

        findings.Select(finding => (finding.Number, finding.Rule, finding.State)).ShouldBe(
        [
            (1, "ticket.quantity", FindingState.Open),
            (2, "ticket.threads", FindingState.Open),
            (3, "place.travel-outside", FindingState.Solved),
        ]);
    }

    [Fact]
    public void A_rule_that_fires_often_is_one_finding_with_its_20_worst_places()
    {
        var finding = Spikes.Finding("place.crown")!;

        finding.Count.ShouldBe(25);
        finding.Places.Count.ShouldBe(20);
        finding.Places.Select(place => place.Measured!.Value).Min().ShouldBe(72.5);
        finding.Measured!.Value.ShouldBe(74.4);
    }

    [Fact]
    public void Five_of_them_are_marked_for_the_proof_and_places_read_from_left_to_right()
    {
        var places = Spikes.Finding("place.crown")!.Places;

        places.Where(place => place.Mark is not null).Select(place => place.Measured!.Value).Order().ShouldBe([74.0, 74.1, 74.2, 74.3, 74.4]);
        (Spikes.Prepare().Findings.SelectMany(finding => finding.Places).Select(place => place.Mark).OfType<int>().ToArray() is var marks
            && marks.SequenceEqual(Enumerable.Range(1, marks.Length)) && marks.Length > 5).ShouldBeTrue();
        places.ShouldBe(places.OrderBy(place => place.BoxMm!.Value.Bottom).ThenBy(place => place.BoxMm!.Value.Left));
    }

    [Fact]
    public void A_place_names_box_block_and_stitches_of_the_received_tape()
    {
        var tape = Stitched.Along(new(0, 0), new(0, 40), new(300, 40), new(340, 0));
        var job = (Job.Clean with { Tape = tape }).Seating(new TicketSeating { BaseAboveBrimMm = 9 });

        var place = job.Finding("place.brim-clearance")!.Places[0];

        place.At.ShouldBe(PlaceKind.CapFront);
        place.Blocks.ShouldBe([1]);
        place.Stitches.ShouldBe(new StitchRange(1, 1));
        place.BoxMm!.Value.ShouldBe(new BoxMm(-17, 9, -17, 9));
    }

    [Fact]
    public void A_rule_speaks_only_where_its_row_says()
    {
        var clamp = Job.FrameOf("flat-clamp");
        var job = (Job.Clean with
        {
            Frame = clamp,
            Tape = Stitched.Seated(500, 250),
            Ticket = Job.Clean.Ticket with { Location = CapLocation.Left },
        }).Seating(new TicketSeating { BaseAboveBrimMm = 3 });

        job.Prepare().Findings.ShouldBeEmpty();
        (job with { Frame = job.Frame with { Holds = FrameHold.StrapAndPosts } }).Finding("place.brim-clearance").ShouldNotBeNull();
    }

    [Fact]
    public void Sewing_on_the_side_ends_at_the_field_of_the_clamp() =>
        (Job.Clean with
        {
            Frame = Job.FrameOf("flat-clamp") with { FieldMm = new BoxMm(-20, 0, 20, 80) },
            Tape = Stitched.Seated(500, 250),
            Ticket = Job.Clean.Ticket with { Location = CapLocation.Left },
        }).Finding("place.outside-field")!.Message.ShouldBe("Needle points lie up to 5 mm outside the field of the frame.");

    [Fact]
    public void A_contradiction_is_told_once_for_each_thing_that_is_wrong()
    {
        var machine = Job.Clean.Machine with { CapFrames = ["standard-180"], MaxStitches = 10, MaxStops = 0, Heads = 2, HeadsOff = [1, 2] };
        var finding = (RuleCases.Colored(2, 2) with { Machine = machine }).Finding("ticket.machine")!;

        finding.Count.ShouldBe(4);
        finding.Message.ShouldStartWith("Machine eight-head does not take frame wide-270. All heads of machine eight-head are off.");
    }

    [Fact]
    public void A_frame_that_is_for_other_styles_holds() =>
        (Job.Clean with { Frame = Job.Clean.Frame with { ForStyles = ["visor"] } }).Finding("ticket.style")!
            .Message.ShouldBe("Frame wide-270 is not for cap style six-panel-structured-mid.");

    private static TapePoint Spike(int i) => i % 2 == 0 ? new(20 * (i - 25) / 10, 0) : new(20 * (i - 25) / 10, 590 + (i / 2));
}
