using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;
using static CapPrep.TestKit.Tapes.RawTape;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class TapeRepairTests
{
    private static readonly RepairSettings AsItIs = new() { Label = "10427", TrimBy = TrimBy.Hand };
    private static readonly RepairSettings Trimmed = new() { Label = "10427" };

    [Fact]
    public void A_sound_tape_of_the_same_name_comes_back_byte_for_byte()
    {
        var bytes = TapeBuilder.Crest().ToBytes("10427");

        var sew = TapeRepair.Rewrite(Read(bytes), Trimmed);

        sew.Bytes.ShouldBe(bytes);
        sew.Changes.ShouldBeEmpty();
        sew.StitchesEqual.ShouldBeTrue();
        sew.OriginShift.ShouldBe(TapePoint.Origin);
    }

    [Fact]
    public void Another_name_is_a_changed_label_and_nothing_else() =>
        TapeRepair.Rewrite(Read(TapeBuilder.Crest().ToBytes("OTHER")), Trimmed).Changes.ShouldBe([TapeChange.Label]);

    [Fact]
    public void Every_fault_of_the_container_is_repaired()
    {
        var damaged = Of(Header(1, stops: 9, left: 77), Stop, Right1, Stop, Stop, Right1, Unknown, Right1, Stop)
            .WithoutEnd().Then(0x00, 0x00);

        var sew = TapeRepair.Rewrite(Read(damaged), AsItIs);

        sew.Changes.ShouldBe([TapeChange.Container, TapeChange.Label]);
        sew.StitchesEqual.ShouldBeTrue();
        var again = Read(sew.Bytes);
        again.Quirks.ShouldBeEmpty();
        again.Kinds.ToArray().ShouldBe([RecordKind.Stitch, RecordKind.ColorStop, RecordKind.Stitch, RecordKind.Jump, RecordKind.Stitch]);
    }

    [Fact]
    public void A_left_out_stop_that_moves_keeps_its_move()
    {
        byte[] movingStop = [0x01, 0x00, 0xC3];

        var sew = TapeRepair.Rewrite(Read(Of(Header(3), movingStop, Right1, Right1)), AsItIs);

        Read(sew.Bytes).Kinds.ToArray().ShouldBe([RecordKind.Jump, RecordKind.Stitch, RecordKind.Stitch]);
        Read(sew.Bytes).X.ToArray().ShouldBe([1, 2, 3]);
    }

    [Fact]
    public void A_cut_is_written_with_the_machines_number_of_jumps()
    {
        var received = Read(Of(Header(7), Right1, JumpRight81, Jump0, Jump0, Jump0, Right1, Right1));

        var sew = TapeRepair.Rewrite(received, Trimmed);

        sew.Changes.ShouldContain(TapeChange.Trims);
        sew.StitchesEqual.ShouldBeTrue();
        var tape = Read(sew.Bytes);
        tape.Kinds.ToArray().ShouldBe(
            [RecordKind.Stitch, RecordKind.Jump, RecordKind.Jump, RecordKind.Jump, RecordKind.Stitch, RecordKind.Stitch]);
        tape.X.ToArray().ShouldBe([1, 28, 55, 83, 83, 84]);
    }

    [Fact]
    public void Jump_groups_that_are_no_trim_keep_their_number()
    {
        var received = Read(Of(Header(6), Right1, Jump0, JumpRight81, Right1, Jump0, Right1));

        Read(TapeRepair.Rewrite(received, Trimmed).Bytes).Kinds.ToArray().ShouldBe(received.Kinds.ToArray());
    }

    [Theory]
    [InlineData(TrimBy.Hand)]
    [InlineData(TrimBy.StopOnly)]
    public void A_machine_that_does_not_trim_at_jumps_gets_the_cuts_as_received(TrimBy trimBy)
    {
        var received = Read(Of(Header(6), Right1, JumpRight81, Jump0, Jump0, Jump0, Right1));

        var sew = TapeRepair.Rewrite(received, Trimmed with { TrimBy = trimBy });

        sew.Changes.ShouldNotContain(TapeChange.Trims);
        Read(sew.Bytes).X.ToArray().ShouldBe(received.X.ToArray());
    }

    [Fact]
    public void Start_and_end_come_to_the_bottom_center_when_asked()
    {
        var received = Read(TapeBuilder.Box(200, 100, new(300, 50)).ToBytes("10427"));
        var start = StitchSequence.Of(received, 3).Extents().BottomCenter;

        var sew = TapeRepair.Rewrite(received, Trimmed with { StartAndEnd = start });

        start.ShouldBe(new TapePoint(400, 50));
        sew.OriginShift.ShouldBe(start);
        sew.Changes.ShouldBe([TapeChange.StartEnd]);
        var other = OtherTapeReader.Read(sew.Bytes);
        other.Extents.ShouldBe((-100, 0, 100, 100));
        other.End.ShouldBe((0, 0));
        Read(sew.Bytes).Header.EndX.ShouldBe(0);
    }

    [Fact]
    public void A_tape_that_starts_and_ends_there_already_is_not_changed_by_it()
    {
        var received = Read(TapeBuilder.Seated(200, 100).Move(TapePoint.Origin).ToBytes("10427"));

        TapeRepair.Rewrite(received, Trimmed with { StartAndEnd = TapePoint.Origin }).Changes.ShouldBeEmpty();
    }

    [Fact]
    public void Start_and_end_stay_as_received_when_not_asked()
    {
        var received = Read(Of(Header(5), JumpRight81, Stop, Right1, Right1, JumpRight81));

        var sew = TapeRepair.Rewrite(received, AsItIs);

        OtherTapeReader.Read(sew.Bytes).End.ShouldBe((164, 0));
        OtherTapeReader.Read(sew.Bytes).Penetrations[0].ShouldBe((82, 0));
    }

    [Fact]
    public void A_turned_tape_is_the_same_design_upside_down()
    {
        var received = Read(TapeBuilder.Crest().ToBytes("10427"));

        var sew = TapeRepair.Rewrite(received, Trimmed with { Turn180 = true });

        sew.Changes.ShouldBe([TapeChange.Turned180]);
        sew.StitchesEqual.ShouldBeTrue();
        OtherTapeReader.Read(sew.Bytes).Extents.ShouldBe((-300, -450, 300, 0));
    }

    [Fact]
    public void Changes_are_listed_in_one_order()
    {
        var received = Read(Of(Header(9, stops: 3), Right1, JumpRight81, Jump0, Jump0, Right1).WithoutEnd());

        var sew = TapeRepair.Rewrite(received, Trimmed with { Turn180 = true, StartAndEnd = new(40, 0) });

        sew.Changes.ShouldBe(
            [TapeChange.Container, TapeChange.Label, TapeChange.Trims, TapeChange.StartEnd, TapeChange.Turned180]);
    }

    [Fact]
    public void Settings_follow_the_machine()
    {
        var machine = new MachineTape(TrimBy.StopOnly, 5, TrimPattern.Spread, 12.0, TurnedBy.Machine);

        var settings = RepairSettings.For(machine, "10427");

        settings.ShouldBe(new RepairSettings
        {
            Label = "10427",
            TrimBy = TrimBy.StopOnly,
            TrimJumps = 5,
            TrimPattern = TrimPattern.Spread,
            MaxMove = 120,
        });
    }

    [Fact]
    public void Shorter_moves_for_a_machine_keep_every_needle_point()
    {
        var received = Read(Of(Header(3), Right1, [0x00, 0x00, 0x07], Right1));

        var sew = TapeRepair.Rewrite(received, AsItIs with { MaxMove = 50 });

        sew.StitchesEqual.ShouldBeTrue();
        OtherTapeReader.Read(sew.Bytes).LargestMove.ShouldBeLessThanOrEqualTo(50);
    }

    [Fact]
    public void A_float_that_moves_too_far_in_one_record_keeps_its_number_of_jumps()
    {
        var received = Read(Of(Header(4), Right1, JumpRight81, Jump0, Right1));

        var sew = TapeRepair.Rewrite(received, AsItIs with { MaxMove = 50 });

        sew.StitchesEqual.ShouldBeTrue();
        Read(sew.Bytes).X.ToArray().ShouldBe([1, 28, 55, 83]);
    }

    private static Tape Read(byte[] bytes) => TapeReader.Read(bytes, TapeReading.Standard).Value.ShouldNotBeNull();
}
