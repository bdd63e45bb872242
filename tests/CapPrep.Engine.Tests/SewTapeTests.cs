using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tests.Checks;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests;

public sealed class SewTapeTests
{
    private static readonly Job FarStart = RuleCases.All["place.travel-outside_fail"];

    [Fact]
    public void The_tape_starts_and_ends_at_the_bottom_of_the_design_on_the_seam()
    {
        var prepared = (Job.Clean with { Tape = Stitched.Box(100, 200, 900, 650) }).Prepare();

        var tape = Stitched.Read(prepared.TapeToSew!.Bytes);
        StitchSequence.Of(tape, 3).Extents().ShouldBe(new Box(-400, 0, 400, 450));
        tape.PositionBehind(tape.RecordCount - 1).ShouldBe(TapePoint.Origin);
        prepared.TapeToSew.StitchesEqual.ShouldBeTrue();
        prepared.TapeToSew.Changes.ShouldContain(TapeChange.StartEnd);
        prepared.Seating!.KeyIn.ShouldBe(TapePoint.Origin);
    }

    [Fact]
    public void A_design_beside_the_seam_still_starts_on_the_seam()
    {
        var prepared = Job.Clean.Seating(new TicketSeating { OffsetRightMm = 10 }).Prepare();

        StitchSequence.Of(Stitched.Read(prepared.TapeToSew!.Bytes), 3).Extents().ShouldBe(new Box(-300, 0, 500, 450));
        prepared.Seating!.KeyIn.ShouldBe(TapePoint.Origin);
    }

    [Fact]
    public void As_received_start_and_end_stay_and_the_operator_keys_in_the_way()
    {
        var prepared = AsReceived(Job.Clean with { Tape = Stitched.Box(-400, -225, 400, 225) }).Prepare();

        prepared.TapeToSew!.Changes.ShouldNotContain(TapeChange.StartEnd);
        prepared.Seating!.KeyIn.ShouldBe(new TapePoint(0, 225));
    }

    [Fact]
    public void A_start_outside_the_field_is_solved_by_the_tape_to_sew()
    {
        var finding = FarStart.Finding("place.travel-outside")!;

        finding.State.ShouldBe(FindingState.Solved);
        finding.Measured!.Value.ShouldBe(62);
        finding.Places[0].Mark.ShouldBeNull();
    }

    [Fact]
    public void As_received_a_start_outside_the_field_stays_open() =>
        AsReceived(FarStart).Finding("place.travel-outside")!.State.ShouldBe(FindingState.Open);

    [Fact]
    public void As_received_a_start_over_the_strap_holds()
    {
        var low = AsReceived(Job.Clean with { Tape = Stitched.Box(-400, 75, 400, 500) });

        low.Finding("place.travel-outside")!.Severity.ShouldBe(Severity.Hold);
        low.Prepare().Verdict.ShouldBe(Verdict.ReturnToDigitizer);
        AsReceived(Job.Clean with { Tape = Stitched.Box(-400, 70, 400, 500) }).Finding("place.travel-outside").ShouldBeNull();
    }

    [Fact]
    public void What_the_writer_repairs_is_solved()
    {
        var prepared = RuleCases.All["tape.no-end_fail"].Prepare();

        prepared.Findings.Single(finding => finding.Rule == "tape.no-end").State.ShouldBe(FindingState.Solved);
        prepared.TapeToSew!.Changes.ShouldContain(TapeChange.Container);
    }

    [Fact]
    public void A_cut_off_tape_is_not_solved_by_writing_it_well() =>
        RuleCases.All["tape.cut-off_fail"].Prepare().Verdict.ShouldBe(Verdict.ReturnToOrderDesk);

    [Theory]
    [InlineData(TapeOrientation.Upright, TurnedBy.Machine, false)]
    [InlineData(TapeOrientation.Upright, TurnedBy.Tape, true)]
    [InlineData(TapeOrientation.Turned, TurnedBy.Machine, true)]
    [InlineData(TapeOrientation.Turned, TurnedBy.Tape, false)]
    public void The_design_is_turned_once(TapeOrientation tapeIs, TurnedBy by, bool turned)
    {
        var machine = Job.Clean.Machine with { Tape = Job.Clean.Machine.Tape with { Turn180 = by } };
        var job = Job.Clean with { Machine = machine, Ticket = Job.Clean.Ticket with { TapeIs = tapeIs } };

        var prepared = job.Prepare();

        prepared.TapeToSew!.Changes.Contains(TapeChange.Turned180).ShouldBe(turned);
        prepared.Summary.Operator!.StartsWith("Tape is turned", StringComparison.Ordinal).ShouldBe(by == TurnedBy.Tape);
        var box = StitchSequence.Of(Stitched.Read(prepared.TapeToSew.Bytes), 3).Extents();
        box.ShouldBe(by == TurnedBy.Tape ? new Box(-400, -450, 400, 0) : new Box(-400, 0, 400, 450));
    }

    [Theory]
    [InlineData(1.7, true)]
    [InlineData(1.6, false)]
    public void A_machine_that_would_take_a_stitch_for_a_trim_gets_no_tape(double maxMoveMm, bool sews)
    {
        var machine = Job.Clean.Machine with { Tape = Job.Clean.Machine.Tape with { MaxMoveMm = maxMoveMm } };

        var prepared = (Job.Clean with { Machine = machine }).Prepare();

        (prepared.TapeToSew is not null).ShouldBe(sews);
        prepared.Findings.Any(finding => finding.Rule == "ticket.machine").ShouldBe(!sews);
    }

    /// <summary>A move of 24.2 mm with the needle up, in one jump and the stitch behind it.</summary>
    [Theory]
    [InlineData(12.1)]
    [InlineData(10)]
    [InlineData(8.1)]
    public void A_float_stays_a_float_on_a_machine_of_shorter_moves(double maxMoveMm)
    {
        TapeMove[] moves = [new(RecordKind.Stitch, new(0, 0)), new(RecordKind.Jump, new(121, 0)), new(RecordKind.Stitch, new(242, 0))];
        var machine = Job.Clean.Machine with { Tape = Job.Clean.Machine.Tape with { MaxMoveMm = maxMoveMm } };

        (Job.Clean with { Machine = machine, Tape = Stitched.Of(moves) }).Prepare().TapeToSew!.StitchesEqual.ShouldBeTrue();
    }

    [Fact]
    public void The_same_request_gives_the_same_answer()
    {
        foreach (var (name, job) in RuleCases.All)
        {
            var (one, other) = (job.Prepare(), job.Prepare());

            Print(other).ShouldBe(Print(one), name);
            (other.TapeToSew?.Bytes ?? []).ShouldBe(one.TapeToSew?.Bytes ?? [], name);
        }
    }

    [Fact]
    public void Needles_are_found_by_code_then_name_then_color()
    {
        var machine = Job.Clean.Machine with
        {
            Threads =
            [
                new NeedleThread(1, "1055", "Sand", "#D9C7A0", 40),
                new NeedleThread(2, null, "Navy", "#000080", 40),
                new NeedleThread(3, "9", "Navy", "#1B2A5C", 40),
            ],
        };
        TicketThread[] threads =
        [
            new() { Block = 1, Code = "9", Name = "Sand" },
            new() { Block = 2, Name = "navy" },
            new() { Block = 3, Name = "Other", Color = "#1b2a5c", Action = StopAction.PlacePatch },
            new() { Block = 4, Code = "77", Name = "Sand" },
        ];
        var job = Job.Clean with { Machine = machine, Tape = Stitched.Colors(5), Ticket = Job.Clean.Ticket with { Threads = threads } };

        var plan = job.Prepare().NeedlePlan;

        plan.Select(step => step.Needle).ShouldBe([3, 2, 3, null, null]);
        plan[2].Action.ShouldBe(StopAction.PlacePatch);
        plan.Sum(step => step.Stitches).ShouldBe(job.Prepare().Facts.Stitches);
    }

    [Fact]
    public void Travel_is_counted_between_needle_points_only()
    {
        TapeMove[] moves =
        [
            new(RecordKind.Stitch, new(500, 0)), new(RecordKind.Jump, new(530, 40)), new(RecordKind.Stitch, new(530, 40)),
            new(RecordKind.ColorStop, new(530, 40)), new(RecordKind.Stitch, new(530, 140)), new(RecordKind.Jump, new(0, 0)),
        ];

        var order = (Job.Clean with { Tape = Stitched.Of(moves) }).Prepare().ReceivedOrder;

        order.ShouldBe(new OrderFacts(ColorChanges: 1, Trims: 0, TravelMm: 15));
    }

    [Fact]
    public void A_tape_without_a_penetration_is_refused()
    {
        var empty = new Tape(new TapeHeader(), [RecordKind.Jump], [0], [0], []);

        Should.Throw<ArgumentException>(() => (Job.Clean with { Tape = empty }).Prepare());
    }

    private static Job AsReceived(Job job) =>
        job with { Ticket = job.Ticket with { SewOrder = new TicketSewOrder { Mode = SewOrderMode.AsReceived } } };

    private static string Print(Preparation prepared) =>
        System.Text.Json.JsonSerializer.Serialize(new
        {
            prepared.Verdict,
            prepared.VerdictReasons,
            prepared.Actors,
            prepared.Summary,
            prepared.FirstCap,
            prepared.Facts,
            prepared.Seating,
            prepared.Findings,
            prepared.ReceivedOrder,
            prepared.NeedlePlan,
            prepared.TapeToSew?.Changes,
        });
}
