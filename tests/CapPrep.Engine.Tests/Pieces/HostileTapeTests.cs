using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>Tapes that no digitizer makes end in a coarse reading, never in endless work.</summary>
public sealed class HostileTapeTests
{
    private const int Many = 200_000;

    [Fact]
    public void Many_strands_of_one_stitch_are_read_by_block()
    {
        var moves = new List<TapeMove>();
        for (var k = 0; k < Many / 4; k++)
            moves.AddRange([Jump(k, 1), Jump(k, 2), Jump(k, 3), new(RecordKind.Stitch, Place(k, 4))]);

        var reading = Reading(moves);

        reading.Limits.ShouldBe([ReadingLimit.TooManyStrands]);
        reading.OrderMayChange.ShouldBeFalse();
        reading.Elements.ShouldHaveSingleItem().Penetrations.ShouldBe(Many / 4);
        reading.Spans.ShouldHaveSingleItem();
    }

    [Fact]
    public void More_strands_than_elements_may_be_are_read_by_block()
    {
        var moves = new List<TapeMove>();
        for (var k = 0; k < 2_000; k++)
            moves.AddRange([Jump(k, 1), Jump(k, 2), Jump(k, 3), new(RecordKind.Stitch, Place(k, 4)), new(RecordKind.Stitch, Place(k, 20))]);

        Reading(moves).Limits.ShouldBe([ReadingLimit.TooMuchToCompare]);
    }

    [Fact]
    public void Stitches_all_in_one_hole_are_one_element()
    {
        var reading = Reading(Enumerable.Repeat(new TapeMove(RecordKind.Stitch, new(3, 4)), Many));

        reading.Elements.ShouldHaveSingleItem().Cover.Area.ShouldBe(1);
        reading.Limits.ShouldBeEmpty();
    }

    [Fact]
    public void A_design_wider_than_any_frame_is_read_by_block()
    {
        var reading = Reading(Enumerable.Range(0, Many).Select(k => new TapeMove(RecordKind.Stitch, new(100 * k, 50 * k))));

        reading.Limits.ShouldBe([ReadingLimit.TooWide]);
        reading.Elements.ShouldHaveSingleItem().Cover.ShouldBe(Cover.None);
    }

    [Fact]
    public void A_scribble_over_the_whole_field_ends()
    {
        var reading = Reading(Enumerable.Range(0, Many).Select(k => new TapeMove(RecordKind.Stitch, Scribbled(k, 3_900))));

        reading.Spans[^1].Last.ShouldBe(Many - 1);
    }

    [Fact]
    public void A_scribble_on_a_thumbnail_ends()
    {
        var reading = Reading(Enumerable.Range(0, Many).Select(k => new TapeMove(RecordKind.Stitch, Scribbled(k, 90))));

        reading.Spans[^1].Last.ShouldBe(Many - 1);
    }

    [Fact]
    public void Thousands_of_blocks_keep_their_order()
    {
        var moves = new List<TapeMove>();
        for (var k = 0; k < 5_000; k++)
            moves.AddRange([new(RecordKind.Stitch, Place(k, 0)), new(RecordKind.Stitch, Place(k, 30)), new(RecordKind.ColorStop, Place(k, 30))]);

        var reading = Reading(moves);

        reading.OrderMayChange.ShouldBeFalse();
        reading.Limits.ShouldNotBeEmpty();
    }

    [Fact]
    public void More_than_200_blocks_are_named()
    {
        var moves = new List<TapeMove>();
        for (var k = 0; k < 201; k++)
            moves.AddRange([new(RecordKind.Stitch, Place(k, 0)), new(RecordKind.Stitch, Place(k, 30)), new(RecordKind.ColorStop, Place(k, 30))]);

        Reading(moves).Limits.ShouldBe([ReadingLimit.TooManyBlocks]);
    }

    [Fact]
    public void More_elements_than_allowed_are_joined_within_their_strand()
    {
        // 1,600 columns of 4 mm2 side by side, each joined to the next by one short stitch: apart enough not to be one area.
        var moves = new List<TapeMove>();
        for (var k = 0; k < 1_600; k++)
        {
            var foot = new TapePoint(k % 60 * 60, k / 60 * 60);
            moves.AddRange(Enumerable.Range(0, 24).Select(row => new TapeMove(RecordKind.Stitch, foot + new TapePoint(row % 2 * 20, row))));
        }

        var reading = Reading(moves);

        reading.Elements.Count.ShouldBe(1_500);
        reading.Limits.ShouldBe([ReadingLimit.TooManyElements]);
        reading.OrderMayChange.ShouldBeTrue();
    }

    private static DesignReading Reading(IEnumerable<TapeMove> moves)
    {
        var read = TapeReader.Read(TapeBuilder.Of([.. moves]), new() { TrimJumps = 3 });
        return DesignReader.Read(StitchSequence.Of(read.Value.ShouldNotBeNull(), 3));
    }

    private static TapeMove Jump(int k, int step) => new(RecordKind.Jump, Place(k, step));

    private static TapePoint Place(int k, int step) => new((k % 300 * 4) + step, k / 300 % 300 * 4);

    // A walk that jumps about without any pattern; no step is longer than one record allows.
    private static TapePoint Scribbled(int k, int side)
    {
        var across = (k * 7L) % (2L * side);
        var up = (k / 9L * 5) % (2L * side);
        var shake = (int)(((uint)k * 2654435761u) >> 27);
        return new((int)Math.Min(across, (2 * side) - across) + shake, (int)Math.Min(up, (2 * side) - up) + (shake * 3 % 29));
    }
}
