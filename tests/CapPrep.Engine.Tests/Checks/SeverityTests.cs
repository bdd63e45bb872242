using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks;

/// <summary>Each level at the last good and the first bad tape unit. Tape units are 0.1 mm.</summary>
public sealed class SeverityTests
{
    [Theory]
    [InlineData(550, null)]
    [InlineData(551, Severity.Warn)]
    [InlineData(635, Severity.Warn)]
    [InlineData(636, Severity.Hold)]
    public void Height_passes_one_limit_after_the_other(int height, Severity? expected) =>
        Level("place.too-tall", Job.Clean with { Tape = Stitched.Seated(100, height) }).ShouldBe(expected);

    [Theory]
    [InlineData(1270, null)]
    [InlineData(1271, Severity.Warn)]
    [InlineData(1500, Severity.Warn)]
    [InlineData(1501, Severity.Hold)]
    public void Width_passes_one_limit_after_the_other(int width, Severity? expected) =>
        Level("place.too-wide", Job.Clean with { Tape = Stitched.Seated(width, 200) }).ShouldBe(expected);

    [Theory]
    [InlineData(127, null)]
    [InlineData(126, Severity.Note)]
    [InlineData(100, Severity.Note)]
    [InlineData(99, Severity.Warn)]
    [InlineData(80, Severity.Warn)]
    [InlineData(79, Severity.Hold)]
    public void Height_above_the_brim_passes_one_limit_after_the_other(int above, Severity? expected) =>
        Level("place.brim-clearance", BasedAt(above / 10.0)).ShouldBe(expected);

    /// <summary>Top line of the style: 68 and 76 mm on the seam, 65 and 73 mm at 30 mm from it.</summary>
    [Theory]
    [InlineData(0, 680, null)]
    [InlineData(0, 681, Severity.Warn)]
    [InlineData(0, 760, Severity.Warn)]
    [InlineData(0, 761, Severity.Hold)]
    [InlineData(300, 650, null)]
    [InlineData(-300, 651, Severity.Warn)]
    [InlineData(300, 731, Severity.Hold)]
    [InlineData(150, 665, null)]
    [InlineData(150, 666, Severity.Warn)]
    public void The_top_line_falls_away_to_the_sides(int x, int top, Severity? expected) =>
        Level("place.crown", PointAt(x, top)).ShouldBe(expected);

    /// <summary>Eyelets of the style: rim of 4 mm about (37, 82) mm.</summary>
    [Theory]
    [InlineData(730, null)]
    [InlineData(731, Severity.Warn)]
    [InlineData(780, Severity.Warn)]
    [InlineData(781, Severity.Hold)]
    public void An_eyelet_keeps_the_needle_away_and_holds_where_it_falls_in(int y, Severity? expected) =>
        Level("place.eyelet", PointAt(370, y)).ShouldBe(expected);

    [Fact]
    public void An_applique_may_cover_an_eyelet()
    {
        var job = PointAt(370, 820);

        Level("place.eyelet", job with { Ticket = job.Ticket with { Technique = Technique.Applique } }).ShouldBeNull();
    }

    /// <summary>Upright side seams at 43 mm on both sides.</summary>
    [Theory]
    [InlineData(380, null)]
    [InlineData(381, Severity.Warn)]
    public void A_side_seam_warns_within_its_distance(int x, Severity? expected) =>
        Level("place.side-seam", UprightSeams(43) with { Tape = Stitched.Along(new(-x, 0), new(x, 100)) }).ShouldBe(expected);

    [Theory]
    [InlineData(370, null)]
    [InlineData(371, Severity.Hold)]
    public void Posts_hold_within_their_distance(int x, Severity? expected) =>
        Level("place.posts", (Job.Clean with { Frame = Job.Clean.Frame with { PostsXMm = [-45, 45] } }) with { Tape = Stitched.Along(new(-x, 0), new(x, 100)) })
            .ShouldBe(expected);

    [Fact]
    public void Above_the_clips_the_posts_are_no_longer_in_the_way()
    {
        var frame = Job.Clean.Frame with { PostsXMm = [-40, 40], SidesHeldBelowMm = 20 };

        Level("place.posts", (Job.Clean with { Frame = frame, Tape = Stitched.Seated(800, 100) }).Seating(new TicketSeating { BaseAboveBrimMm = 28 })).ShouldBeNull();
        Level("place.posts", (Job.Clean with { Frame = frame, Tape = Stitched.Seated(800, 100) }).Seating(new TicketSeating { BaseAboveBrimMm = 27.9 })).ShouldBe(Severity.Hold);
    }

    [Theory]
    [InlineData(8, null)]
    [InlineData(-9, Severity.Note)]
    [InlineData(20, Severity.Note)]
    [InlineData(21, Severity.Warn)]
    public void A_tape_whose_origin_is_not_its_middle_is_off_center(int middle, Severity? expected) =>
        Level("place.off-center", RuleCases.CenteredByOrigin(middle)).ShouldBe(expected);

    [Fact]
    public void A_wanted_offset_is_not_off_center() =>
        Level("place.off-center", RuleCases.CenteredByOrigin(30).Seating(new TicketSeating { CenterBy = SeatingCenter.Origin, OffsetRightMm = 1 }))
            .ShouldBeNull();

    /// <summary>1.5 mm or 3 percent, whichever is more: about 2.4 mm of 80 mm.</summary>
    [Theory]
    [InlineData(82.4, 45, null)]
    [InlineData(82.5, 45, Severity.Hold)]
    [InlineData(77.7, 45, null)]
    [InlineData(77.6, 45, Severity.Hold)]
    [InlineData(80, 46.5, null)]
    [InlineData(80, 46.6, Severity.Hold)]
    public void Another_size_than_sold_holds(double width, double height, Severity? expected) =>
        Level("ticket.size", RuleCases.Expecting(width, height)).ShouldBe(expected);

    [Theory]
    [InlineData(3, 3, null)]
    [InlineData(3, 2, Severity.Hold)]
    [InlineData(3, 4, Severity.Warn)]
    [InlineData(3, 0, Severity.Note)]
    public void Threads_and_color_blocks_are_compared(int blocks, int threads, Severity? expected) =>
        Level("ticket.threads", RuleCases.Colored(blocks, threads)).ShouldBe(expected);

    [Fact]
    public void Threads_that_repeat_need_one_needle()
    {
        var job = RuleCases.Colored(14, 14);
        var twice = job.Ticket.Threads!.Select(thread => thread with { Name = $"Thread {thread.Block % 7}" });

        Level("ticket.needles", job with { Ticket = job.Ticket with { Threads = [.. twice] } }).ShouldBeNull();
    }

    [Fact]
    public void Without_a_thread_list_every_block_is_its_own_thread() =>
        Level("ticket.needles", RuleCases.Colored(13, 0)).ShouldBe(Severity.Hold);

    [Theory]
    [InlineData(49, null)]
    [InlineData(48, Severity.Note)]
    [InlineData(47, Severity.Hold)]
    public void Too_few_blanks_hold_and_none_to_spare_is_a_note(int blanks, Severity? expected) =>
        Level("ticket.quantity", Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = blanks } }).ShouldBe(expected);

    [Fact]
    public void Sizes_of_a_lot_must_add_up()
    {
        var lot = new CapLot { Quantity = 48, Sizes = [new LotSize("M", 20), new LotSize("L", 27)] };

        Level("ticket.quantity", Job.Clean with { Ticket = Job.Clean.Ticket with { CapLots = [lot] } }).ShouldBe(Severity.Hold);
    }

    [Theory]
    [InlineData(297, null)]
    [InlineData(296, Severity.Hold)]
    public void More_than_one_percent_missing_is_a_cut_off_tape(int records, Severity? expected) =>
        Level("tape.cut-off", Announcing(300, records)).ShouldBe(expected);

    [Fact]
    public void Without_end_and_count_nobody_knows_whether_a_tape_is_whole()
    {
        var tape = RawTape.WithoutEnd(RawTape.Of(
            RawTape.WithHeader(RawTape.Header(0), "ST", "none"),
            Enumerable.Repeat(RawTape.Right1, 300)));

        Level("tape.cut-off", Job.Clean with { Tape = Stitched.Read(tape) }).ShouldBe(Severity.Warn);
    }

    private static Job Announcing(int announced, int records) => Job.Clean with
    {
        Tape = Stitched.Read(RawTape.Of(
            RawTape.Header(announced, right: records),
            Enumerable.Repeat(RawTape.Right1, records))),
    };

    private static Job BasedAt(double mm) => Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = mm });

    /// <summary>Two needle points: one on the seam at the base, one at a place on the cap.</summary>
    private static Job PointAt(int x, int y) => (Job.Clean with { Tape = Stitched.Along(new(0, 130), new(x, y)) })
        .Seating(new TicketSeating { By = SeatingBase.Origin, CenterBy = SeatingCenter.Origin, BaseAboveBrimMm = 0 });

    private static Job UprightSeams(double x) => Job.Clean with
    {
        Style = Job.Clean.Style! with
        {
            Seams = [new CapSeam("side", [new(x, 0), new(x, 100)]), new CapSeam("side", [new(-x, 0), new(-x, 100)])],
        },
    };

    private static Severity? Level(string rule, Job job) => job.Finding(rule)?.Severity;
}
