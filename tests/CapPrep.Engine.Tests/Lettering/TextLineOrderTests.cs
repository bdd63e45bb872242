using CapPrep.Engine.Drafting;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>What is said of a line of letters that is sewn from end to end, and what is proposed.</summary>
public sealed class TextLineOrderTests
{
    private const string Rule = "order.text-line";

    [Fact]
    public void A_line_sewn_from_end_to_end_runs_inward_on_one_side()
    {
        var finding = Sentence.Joined.Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Warn);
        finding.Measured.ShouldNotBeNull().Value.ShouldBe(0.5, 0.1);
        finding.Places.ShouldHaveSingleItem().BoxMm.ShouldNotBeNull().Width.ShouldBe(54, 1);
        finding.Remedy.ShouldNotBeNull().Message.ShouldContain("from the center to one end");
    }

    [Fact]
    public void Sewn_from_the_middle_outward_it_is_right()
    {
        var prepared = (Job.Clean with { Tape = Sentence.Tape(Sentence.Text.CenterOut()) }).Prepare();

        prepared.Findings.ShouldNotContain(finding => finding.Rule == Rule);
        prepared.Order!.Received.Shares.LineIndex.ShouldBe([0]);
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void A_quarter_of_the_pairs_may_run_inward(bool oneMore, bool warns)
    {
        // Eight letters with the seam between the fourth and the fifth: six pairs on each side, three or four wrong.
        int[] order = oneMore ? [3, 2, 1, 0, 7, 4, 6, 5] : [3, 2, 1, 0, 7, 4, 5, 6];
        var prepared = (Job.Clean with { Tape = Sentence.Tape(Eight with { Order = order }) }).Prepare();

        prepared.Order!.Received.Shares.LineIndex.ShouldHaveSingleItem().ShouldBe(oneMore ? 0.3333 : 0.25, 0.001);
        prepared.Findings.Any(finding => finding.Rule == Rule).ShouldBe(warns);
    }

    [Fact]
    public void A_short_line_may_be_sewn_as_it_likes() =>
        (Job.Clean with { Tape = Sentence.Tape(new Text("harbor") { Join = LetterJoin.Thread }) }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void On_a_flat_clamp_nobody_minds() =>
        (Sentence.Joined with { Frame = Sentence.Joined.Frame with { Holds = FrameHold.FlatClamp } }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void On_a_front_of_one_piece_it_is_a_note()
    {
        var job = Sentence.Joined;

        (job with { Style = job.Style! with { CenterSeam = null } }).Finding(Rule).ShouldNotBeNull().Severity.ShouldBe(Severity.Note);
    }

    [Fact]
    public void Handwriting_may_be_sewn_as_it_is_written()
    {
        var script = new Text("harbor bridge house") { Work = LetterWork.Running, Join = LetterJoin.Thread, XHeight = 40, Gap = 6 };
        var prepared = (Job.Clean with { Tape = Sentence.Tape(script) }).Prepare();

        prepared.TextLines.ShouldHaveSingleItem().IsConnected.ShouldBeTrue();
        prepared.Findings.ShouldNotContain(finding => finding.Rule == Rule);
    }

    [Fact]
    public void On_a_base_fill_the_cloth_is_held()
    {
        var draft = new Draft().Move(new(-360, -30)).Sew(Fill.Of(new(-360, -30, 360, 120)));
        (Sentence.Text with { Join = LetterJoin.Thread }).Sew(draft.ColorStop());

        var prepared = (Job.Clean with { Tape = draft.ToTape("TEST") }).Prepare();

        prepared.TextLines.Count.ShouldBe(1);
        prepared.Findings.ShouldNotContain(finding => finding.Rule == Rule);
    }

    [Fact]
    public void A_line_wholly_on_one_side_does_not_cross_the_seam()
    {
        var draft = new Draft();
        new Text("lane road") { Middle = new(300, 0), XHeight = 60, StrokeWidth = 12, Join = LetterJoin.Thread }.Sew(draft);
        draft.Trim(new(-300, 0)).Sew(Fill.Of(new(-550, 0, -300, 100)));

        (Job.Clean with { Tape = draft.ToTape("TEST") }).Finding(Rule).ShouldBeNull();
    }

    [Fact]
    public void Letters_that_are_trimmed_apart_are_put_in_order()
    {
        var prepared = (Sentence.Trimmed with { Ticket = Always }).Prepare();

        prepared.Order!.Received.Shares.LineIndexMax.ShouldBeGreaterThan(0.4);
        prepared.Order.Proposed.Shares.LineIndexMax.ShouldBe(0);
    }

    [Fact]
    public void Small_letters_on_one_thread_stay_together()
    {
        var order = (Sentence.Joined with { Ticket = Always }).Prepare().Order.ShouldNotBeNull();

        order.Proposed.Trims.ShouldBe(order.Received.Trims);
    }

    [Fact]
    public void The_line_at_the_bottom_is_the_one_that_is_sewn_first()
    {
        var emblem = new Draft().Move(new(-100, 150)).Sew(Fill.Of(new(-100, 150, 100, 330)));
        Sentence.Text.CenterOut().Sew(emblem);

        var prepared = (Job.Clean with { Tape = emblem.ToTape("TEST") }).Prepare();

        prepared.TextLines.ShouldHaveSingleItem().IsTagline.ShouldBeTrue();
        prepared.Order!.Tagline.ShouldBe(prepared.TextLines[0].Elements);
        prepared.Order.Received.Shares.TaglineLate.ShouldBe(1);
        prepared.Order.Proposed.Shares.TaglineLate.ShouldBe(0);
    }

    [Fact]
    public void The_new_tape_has_the_same_lines()
    {
        var emblem = new Draft().Move(new(-100, 150)).Sew(Fill.Of(new(-100, 150, 100, 330)));
        Sentence.Text.Sew(emblem);
        var job = Job.Clean with { Tape = emblem.ToTape("TEST") };
        var first = job.Prepare();

        var second = (job with { Tape = Stitched.Read(first.ProposedTape.ShouldNotBeNull()) }).Prepare();

        Lines.ShouldBeAlike(second.TextLines, first.TextLines);
        second.Order!.Used.ShouldBe(Engine.Sequence.Planning.UsedOrder.Received);
    }

    private static Text Eight => new("HOLDHOUS") { XHeight = 65, StrokeWidth = 13, Gap = 18 };

    private static Ticket Always => Job.Clean.Ticket with { SewOrder = new TicketSewOrder { Mode = SewOrderMode.Always } };
}
