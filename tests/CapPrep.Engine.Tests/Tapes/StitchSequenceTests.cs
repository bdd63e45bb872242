using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;
using static CapPrep.TestKit.Tapes.RawTape;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class StitchSequenceTests
{
    [Fact]
    public void Relations_say_thread_cut_and_stop()
    {
        var tape = Tape(Right1, Right1, Jump0, Jump0, Right1, Jump0, Jump0, Jump0, Right1, Stop, Right1);

        var stitches = StitchSequence.Of(tape, 3);

        stitches.Relations.ToArray().ShouldBe([Relation.First, Relation.Thread, Relation.Thread, Relation.Cut, Relation.Stop]);
        stitches.Jumps.ToArray().ShouldBe([0, 0, 2, 3, 0]);
        stitches.Block.ToArray().ShouldBe([1, 1, 1, 1, 2]);
        stitches.Record.ToArray().ShouldBe([0, 1, 4, 8, 10]);
        StitchSequence.Of(tape, 2).Relations[2].ShouldBe(Relation.Cut);
    }

    [Fact]
    public void The_needle_does_not_penetrate_at_a_jump()
    {
        var stitches = StitchSequence.Of(Tape(Right1, JumpRight81, Right1), 3);

        stitches.Count.ShouldBe(2);
        stitches.At(1).ShouldBe(new TapePoint(83, 0));
        stitches.Extents().ShouldBe(new Box(1, 0, 83, 0));
    }

    [Fact]
    public void Jumps_and_stops_around_the_design_are_no_relations()
    {
        var stitches = StitchSequence.Of(Tape(Jump0, Jump0, Jump0, Stop, Right1, Stop, Jump0, Jump0, Jump0), 3);

        stitches.Relations.ToArray().ShouldBe([Relation.First]);
        stitches.Jumps.ToArray().ShouldBe([0]);
        stitches.Blocks.ShouldBe(1);
    }

    [Fact]
    public void Jumps_on_both_sides_of_a_stop_are_a_stop_and_no_trim()
    {
        var stitches = StitchSequence.Of(Tape(Right1, Jump0, Jump0, Jump0, Stop, Jump0, Right1), 3);

        stitches.Relations[1].ShouldBe(Relation.Stop);
        stitches.Jumps[1].ShouldBe(4);
    }

    [Fact]
    public void Empty_blocks_do_not_count()
    {
        var stitches = StitchSequence.Of(Tape(Right1, Stop, Stop, Stop, Right1), 3);

        stitches.Block.ToArray().ShouldBe([1, 2]);
        stitches.Blocks.ShouldBe(2);
    }

    [Fact]
    public void Counts_are_those_of_the_records()
    {
        var tape = Tape(JumpRight81, Right1, Right1, Jump0, Jump0, Jump0, Right1, Stop, Right1, Unknown, Jump0);

        TapeCounts.Of(tape, 3).ShouldBe(new TapeFacts(
            Records: 11, Stitches: 4, Jumps: 5, Trims: 1, ColorStops: 1, Blocks: 2, Strands: 3, Extents: new(82, 0, 85, 0)));
        TapeCounts.Of(tape, 4).Trims.ShouldBe(0);
    }

    private static Tape Tape(params byte[][] records) =>
        TapeReader.Read(Of(Header(records.Length), records), TapeReading.Standard).Value.ShouldNotBeNull();
}
