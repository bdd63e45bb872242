using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Seating;

public sealed class SeatingTests
{
    private static readonly Gen<(int Left, int Bottom, int Width, int Height)> AnyBox =
        Gen.Select(Gen.Int[-300, 300], Gen.Int[-300, 300], Gen.Int[20, 600], Gen.Int[20, 400]);

    [Fact]
    public void The_lowest_needle_point_comes_to_the_base_and_the_middle_onto_the_seam()
    {
        var seated = SeatedOf(Job.Clean with { Tape = Stitched.Box(100, 200, 900, 650) });

        seated.Box.ShouldBe(new Box(-400, 130, 400, 580));
        seated.Origin.ShouldBe(new TapePoint(-500, -70));
    }

    [Fact]
    public void The_ticket_moves_base_and_center()
    {
        var seated = SeatedOf(Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 20, OffsetRightMm = -12.5 }));

        seated.Box.ShouldBe(new Box(-525, 200, 275, 650));
    }

    [Fact]
    public void By_origin_the_tapes_start_point_is_seated()
    {
        var seated = SeatedOf((Job.Clean with { Tape = Stitched.Box(-300, -100, 500, 350) })
            .Seating(new TicketSeating { By = SeatingBase.Origin, CenterBy = SeatingCenter.Origin, BaseAboveBrimMm = 30 }));

        seated.Origin.ShouldBe(new TapePoint(0, 300));
        seated.Box.ShouldBe(new Box(-300, 200, 500, 650));
    }

    [Fact]
    public void By_x_a_place_of_the_tape_comes_onto_the_seam()
    {
        var seated = SeatedOf(Job.Clean.Seating(new TicketSeating { CenterBy = SeatingCenter.X, CenterXMm = 5 }));

        seated.Box.Left.ShouldBe(-450);
    }

    [Fact]
    public void By_weight_the_thread_laid_is_balanced_about_the_seam()
    {
        var heavyLeft = Stitched.Along(new(0, 0), new(0, 300), new(10, 0), new(10, 300), new(20, 0), new(600, 0));

        var seated = SeatedOf((Job.Clean with { Tape = heavyLeft }).Seating(new TicketSeating { CenterBy = SeatingCenter.Weight }));

        seated.CenterBy.ShouldBe(SeatingCenter.Weight);
        // Thread: 300 at x = 0, 300.17 at 5, 300 at 10, 300.17 at 15, 580 at 310.
        seated.Offset.X.ShouldBe(-106);
    }

    [Fact]
    public void Without_known_text_lines_the_box_is_centered_and_the_answer_says_so() =>
        SeatedOf(Job.Clean.Seating(new TicketSeating { CenterBy = SeatingCenter.MainText })).CenterBy.ShouldBe(SeatingCenter.Box);

    [Fact]
    public void A_turned_tape_is_turned_back()
    {
        var tape = Stitched.Box(100, 200, 900, 650);
        var seated = SeatedOf(Job.Clean with { Tape = tape, Ticket = Job.Clean.Ticket with { TapeIs = TapeOrientation.Turned } });

        seated.Box.ShouldBe(new Box(-400, 130, 400, 580));
        seated.OnCap(new TapePoint(900, 650)).ShouldBe(new TapePoint(-400, 130));
        seated.OnTape(new TapePoint(-400, 130)).ShouldBe(new TapePoint(900, 650));
    }

    [Fact]
    public void Clearances_are_the_room_left_to_brim_top_and_sides()
    {
        var room = SeatedOf(Job.Clean).ClearancesMm;

        room.Brim.ShouldBe(13);
        // Top line of the style, hold: 73 mm at 30 mm from the seam, 68 mm at 50 mm.
        room.Top.ShouldBe(70.5 - 58);
        room.Left.ShouldBe(37);
        room.Right.ShouldBe(37);
    }

    [Theory]
    [InlineData(400, 450, 1.0)]
    [InlineData(100, 551, 0.99)]
    [InlineData(100, 1100, 0.5)]
    public void The_largest_size_stays_below_the_warn_limit_of_the_height(int width, int height, double scale) =>
        SeatedOf((Job.Clean with { Tape = Stitched.Seated(width, height) }).WithFront(zone => zone with { TopLine = [] }))
            .LargestScale.ShouldBe(scale);

    [Fact]
    public void The_largest_size_stays_below_the_top_line_too()
    {
        var seated = SeatedOf(Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 25 }));

        // 25 + 45 s <= 65 - 5 (40 s - 30) / 20 is true up to s = 0.863.
        seated.LargestScale.ShouldBe(0.86);
    }

    [Fact]
    public void A_shops_own_limit_of_the_height_counts_for_the_largest_size()
    {
        var book = new RuleBook
        {
            Id = "harbor",
            Name = "Harbor",
            Rules = [new RuleChange("place.too-tall") { Limits = [new LimitChange(Severity.Warn, 40, false)] }],
        };

        SeatedOf(Job.Clean with { Book = book, Tape = Stitched.Seated(100, 500) }).LargestScale.ShouldBe(0.8);
    }

    [Fact]
    public void A_wanted_offset_moves_every_needle_point_by_just_that() => AnyBox.Select(Gen.Int[-300, 300]).Sample((box, offset) =>
    {
        var job = Job.Clean with { Tape = TapeOf(box) };
        var straight = SeatedOf(job);
        var moved = SeatedOf(job.Seating(new TicketSeating { OffsetRightMm = offset / 10.0 }));

        moved.Offset.ShouldBe(straight.Offset + new TapePoint(offset, 0));
        moved.Box.ShouldBe(straight.Box.Shift(offset, 0));
    }, iter: 100);

    [Fact]
    public void A_mirrored_design_is_seated_as_the_mirror_image_with_the_same_findings() => AnyBox.Sample(box =>
    {
        var job = Job.Clean with { Tape = TapeOf(box) };
        var mirrored = job with { Tape = MirrorOf(box) };
        var (one, other) = (job.Prepare(), mirrored.Prepare());

        other.Seating!.Box.ShouldBe(Mirror(one.Seating!.Box));
        other.Findings.Select(Key).ShouldBe(one.Findings.Select(Key));
    }, iter: 100);

    private static (string, Severity, double?) Key(Engine.Checks.Finding finding) =>
        (finding.Rule, finding.Severity, finding.Measured?.Value);

    private static Engine.Tapes.Tape TapeOf((int Left, int Bottom, int Width, int Height) box) =>
        Corners(box.Left, box.Bottom, box.Left + box.Width, box.Bottom + box.Height);

    private static Engine.Tapes.Tape MirrorOf((int Left, int Bottom, int Width, int Height) box) =>
        Corners(-box.Left, box.Bottom, -box.Left - box.Width, box.Bottom + box.Height);

    private static Engine.Tapes.Tape Corners(int x1, int y1, int x2, int y2) =>
        Stitched.Along(new(x1, y1), new(x2, y1), new(x2, y2), new(x1, y2), new(x1, y1 + 10));

    private static Box Mirror(Box box) => new(-box.Right, box.Bottom, -box.Left, box.Top);

    private static SeatedDesign SeatedOf(Job job) => job.Prepare().Seating.ShouldNotBeNull();
}
