using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Revisions;

/// <summary>What a lead looks at first when a tape comes back: what is different although nobody asked for it.</summary>
public sealed class OutsideChangeTests
{
    private static readonly Tape Before = Revised.Boxes(Revised.Left, Revised.Middle, Revised.Right);

    [Fact]
    public void The_same_stitches_have_changed_nowhere()
    {
        var report = Revised.Report(Before, Before);

        report.SameStitches.ShouldBeTrue();
        report.ChangedOutside.ShouldBeEmpty();
        report.Of.ShouldBe("job_1");
    }

    [Theory]
    [InlineData(37, -112)]
    [InlineData(-5, 0)]
    public void Another_start_point_is_no_change(int dx, int dy)
    {
        var report = Revised.Report(Before, Revised.Shifted(Before, _ => new(dx, dy)));

        report.SameStitches.ShouldBeFalse();
        report.ChangedOutside.ShouldBeEmpty();
    }

    [Fact]
    public void What_a_program_rounds_away_is_no_change() =>
        Revised.Report(Before, Revised.Shifted(Before, record => new(record % 2, record % 3 == 0 ? -1 : 0))).ChangedOutside.ShouldBeEmpty();

    [Fact]
    public void Another_order_of_sewing_is_no_change_of_stitches() =>
        Revised.Report(Before, Revised.Boxes(Revised.Right, Revised.Left, Revised.Middle)).ChangedOutside.ShouldBeEmpty();

    [Fact]
    public void A_tape_that_comes_the_other_way_round_is_the_same_design()
    {
        var turned = Revised.Shifted(Before, record => Before.PositionBehind(record).Turned() - Before.PositionBehind(record));
        var job = Job.Clean with { Tape = turned, Ticket = Job.Clean.Ticket with { TapeIs = TapeOrientation.Turned } };

        var report = CapPrepper.Prepare(job.Request() with { Earlier = Revised.Earlier(Before) }).Revision!;

        report.ChangedOutside.ShouldBeEmpty();
    }

    [Fact]
    public void An_element_that_was_mended_as_asked_is_not_told()
    {
        var after = Revised.Boxes(Revised.Left, new Box(-70, 0, 70, 160), Revised.Right);

        Revised.Report(Before, after, Revised.AskedOf(Before, 2)).ChangedOutside.ShouldBeEmpty();
        Revised.Report(Before, after).Kinds().ShouldBe([(OutsideKind.Changed, 2)]);
    }

    [Fact]
    public void One_thing_mended_and_another_moved_is_told()
    {
        var top = new Box(-80, 220, 80, 300);
        var before = Revised.Boxes(Revised.Left, Revised.Middle, Revised.Right, top);
        var mended = Revised.Boxes(Revised.Left, new Box(-70, 0, 70, 160), Revised.Right, top);
        var third = (Job.Clean with { Tape = mended }).Prepare().Reading.Elements[2];
        var records = StitchSequence.Of(mended, 3).Record.ToArray();
        var after = Revised.Shifted(mended, record => record < records[third.First] || record > records[third.Last] ? TapePoint.Origin : new(-12, 0));

        var report = Revised.Report(before, after, Revised.AskedOf(before, 2));

        var size = report.ChangedOutside[0];
        size.What.ShouldBe(OutsideKind.Size);
        size.Message.ShouldBe("The design is 58.8 x 30 mm now, it was 60 x 30 mm.");
        var moved = report.ChangedOutside[1];
        (moved.What, moved.Element).ShouldBe((OutsideKind.Moved, 3));
        moved.Message.ShouldBe("Fill in color block 1 was moved by 1.2 mm.");
        report.ChangedOutside.Count.ShouldBe(2);
    }

    [Fact]
    public void One_stitch_that_differs_is_told_with_its_number()
    {
        var third = (Job.Clean with { Tape = Before }).Prepare().Reading.Elements[2];
        var needle = 0;
        var after = Revised.Shifted(Before, record =>
            Before.Kinds[record] == RecordKind.Stitch && needle++ == third.First + 40 ? new(0, 9) : TapePoint.Origin);

        var change = Revised.Report(Before, after).ChangedOutside.ShouldHaveSingleItem();

        (change.What, change.Element).ShouldBe((OutsideKind.Changed, 3));
        change.Message.ShouldStartWith("Fill in color block 1: 2 of ");
        change.Stitches.ShouldBe(new StitchRange(third.First + 1, third.Last + 1));
    }

    [Fact]
    public void What_is_gone_and_what_was_added_is_told()
    {
        var top = new Box(-80, 220, 80, 300);
        var before = Revised.Boxes(Revised.Left, Revised.Middle, Revised.Right, top);

        var without = Revised.Report(before, Revised.Boxes(Revised.Left, Revised.Right, top));
        var with = Revised.Report(Revised.Boxes(Revised.Left, Revised.Right, top), before);

        without.Kinds().ShouldBe([(OutsideKind.Removed, 2)]);
        with.Kinds().ShouldBe([(OutsideKind.Added, 2)]);
        with.ChangedOutside[0].BoxMm!.Value.Width.ShouldBe(16);
    }

    [Fact]
    public void Underlay_that_was_asked_for_is_not_told_as_added()
    {
        var after = Revised.Boxes(Revised.Left, new Box(-60, 20, 60, 140), Revised.Middle, Revised.Right);

        Revised.Report(Before, after, Revised.AskedOf(Before, 2, "seam.no-underlay")).ChangedOutside.ShouldBeEmpty();
        Revised.Report(Before, after).Kinds().ShouldContain((OutsideKind.Added, 2));
    }

    [Fact]
    public void At_another_size_that_was_asked_for_every_stitch_may_differ()
    {
        var after = Revised.Boxes(new Box(-270, 0, -126, 144), new Box(-72, 0, 72, 144), new Box(126, 0, 270, 144));

        Revised.Report(Before, after, Revised.AskedOf(Before, 1, "place.too-tall", Actor.OrderDesk)).ChangedOutside.ShouldBeEmpty();
        Revised.Report(Before, after).Kinds().Select(change => change.What).ShouldBe([OutsideKind.Size, OutsideKind.Changed, OutsideKind.Changed, OutsideKind.Changed]);
    }

    [Fact]
    public void Another_number_of_colors_is_told_unless_the_order_was_to_change()
    {
        var colored = Revised.Boxes(colored: true, Revised.Left, Revised.Middle, Revised.Right);

        Revised.Report(Before, colored).ChangedOutside.ShouldHaveSingleItem().Message.ShouldBe("There are 3 color blocks now, there were 1.");
        Revised.Report(Before, colored, Revised.AskedOf(Before, 2, "order.bottom-up")).ChangedOutside.ShouldBeEmpty();
    }

    [Fact]
    public void An_element_in_another_color_is_told()
    {
        Box[] small = [new(-300, 220, -200, 300), new(200, 220, 300, 300)];
        var before = Two([Revised.Left, small[0]], [Revised.Right, small[1]]);
        var after = Two([Revised.Left, small[0], small[1]], [Revised.Right]);

        Revised.Report(before, after).Kinds().ShouldBe([(OutsideKind.Colors, 4)]);
    }

    private static Tape Two(Box[] first, Box[] second)
    {
        var draft = new Draft();
        foreach (var (boxes, block) in new[] { (first, 0), (second, 1) })
        {
            for (var i = 0; i < boxes.Length; i++)
            {
                var start = new TapePoint(boxes[i].Left, boxes[i].Bottom);
                if (i > 0)
                    draft.Trim(start);
                else if (block > 0)
                    draft.ColorStop().Move(start);
                draft.Stitch(start).Tie(boxes[i].Center).Sew(Fill.Of(boxes[i])).Tie(boxes[i].Center);
            }
        }

        return draft.ToTape("TEST");
    }
}
