using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;
using static CapPrep.TestKit.Tapes.RawTape;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class TapeQuirkTests
{
    private static readonly byte[] Crest = TapeBuilder.Crest().ToBytes("CREST");

    [Fact]
    public void A_sound_tape_has_no_quirk_of_its_container()
    {
        var quirks = Read(Crest).Quirks.Select(quirk => quirk.Rule);

        quirks.Intersect(TapeRules.OfContainer).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(2)]
    public void A_wrong_record_count_is_reported_with_both_numbers(int error)
    {
        var records = Read(Crest).RecordCount;

        var quirk = Quirk(Crest.WithHeader("ST", $"{records + error}"), TapeRules.HeaderCounts);

        quirk.Measured.ShouldBe(records);
        quirk.Announced.ShouldBe(records + error);
        quirk.Message.ShouldContain($"{records + error}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_record_count_may_or_may_not_include_the_end_record(int more) =>
        ShouldNotShow(Crest.WithHeader("ST", $"{Read(Crest).RecordCount + more}"), TapeRules.HeaderCounts);

    [Fact]
    public void A_missing_record_count_is_reported_without_an_announcement()
    {
        var quirk = Quirk(Crest.WithHeader("ST", "*******"), TapeRules.HeaderCounts);

        quirk.Announced.ShouldBeNull();
        Read(Crest.WithHeader("ST", "*******")).Header.Records.ShouldBeNull();
    }

    [Theory]
    [InlineData("+X", 30.0)]
    [InlineData("-X", 30.0)]
    [InlineData("+Y", 45.0)]
    [InlineData("-Y", 0.0)]
    public void A_wrong_extent_is_reported_in_millimeters(string key, double found)
    {
        var quirk = Quirk(Crest.WithHeader(key, "7"), TapeRules.HeaderExtents);

        quirk.Count.ShouldBe(1);
        quirk.Measured.ShouldBe(found);
        quirk.Announced.ShouldBe(0.7);
    }

    [Fact]
    public void Right_extents_are_not_reported_even_when_the_design_lies_beside_the_start()
    {
        ShouldNotShow(Crest, TapeRules.HeaderExtents);
        ShouldNotShow(TapeBuilder.Box(100, 100, new(300, 300)).ToBytes("ASIDE"), TapeRules.HeaderExtents);
        ShouldNotShow(
            TapeBuilder.Box(100, 100, new(300, 300)).ToBytes("ASIDE").WithHeader("-X", "-300"), TapeRules.HeaderExtents);
    }

    [Fact]
    public void A_wrong_number_of_colors_is_reported()
    {
        var quirk = Quirk(Crest.WithHeader("CO", "7"), TapeRules.HeaderColors);

        (quirk.Measured, quirk.Announced).ShouldBe((2, 7));
        ShouldNotShow(Crest, TapeRules.HeaderColors);
    }

    [Fact]
    public void A_tape_without_end_record_is_read_and_reported()
    {
        var cut = Crest.WithoutEnd();

        Quirk(cut, TapeRules.NoEnd).ByteOffset.ShouldBe(cut.Length);
        Read(cut).RecordCount.ShouldBe(Read(Crest).RecordCount);
        Read(cut).Ending.ShouldBe(new TapeEnding(false, 0, 0));
        ShouldNotShow(Crest, TapeRules.NoEnd);
        Read(Crest).Ending.ShouldBe(TapeEnding.Whole);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_file_that_ends_inside_a_record_is_read_and_reported(int bytes)
    {
        var cut = Crest.WithoutEnd()[..^(3 - bytes)];

        var quirk = Quirk(cut, TapeRules.PartRecord);

        quirk.ByteOffset.ShouldBe(cut.Length - bytes);
        Read(cut).Ending.ShouldBe(new TapeEnding(false, bytes, 0));
        Read(cut).RecordCount.ShouldBe(Read(Crest).RecordCount - 1);
    }

    [Fact]
    public void A_closing_byte_alone_is_no_part_of_a_record() =>
        ShouldNotShow(Crest.WithoutEnd().Then(0x1A), TapeRules.PartRecord);

    [Fact]
    public void Bytes_behind_the_end_are_counted_and_not_read()
    {
        var more = Crest.Then([.. Stitch0, .. End]);

        var quirk = Quirk(more, TapeRules.AfterEnd);

        quirk.Count.ShouldBe(7);
        quirk.ByteOffset.ShouldBe(Crest.Length - 1);
        Read(more).RecordCount.ShouldBe(Read(Crest).RecordCount);
    }

    [Fact]
    public void One_closing_byte_or_none_behind_the_end_is_usual()
    {
        ShouldNotShow(Crest, TapeRules.AfterEnd);
        ShouldNotShow(Crest[..^1], TapeRules.AfterEnd);
    }

    [Fact]
    public void An_end_record_counts_only_where_a_record_begins()
    {
        byte[][] across = [[0x01, 0x00, 0x00], [0xF3, 0x00, 0x03]];

        var tape = Of(Header(300), [.. across, .. Enumerable.Repeat(Right1, 298)]);

        Read(tape).RecordCount.ShouldBe(300);
    }

    [Fact]
    public void Color_blocks_without_a_stitch_are_reported_wherever_they_are()
    {
        var tape = Of(Header(6, stops: 4), Stop, Right1, Stop, Stop, Right1, Stop);

        var quirk = Quirk(tape, TapeRules.EmptyBlock);

        quirk.Count.ShouldBe(3);
        quirk.Record.ShouldBe(0);
        ShouldNotShow(Of(Header(3, stops: 1), Right1, Stop, Right1), TapeRules.EmptyBlock);
    }

    [Fact]
    public void Stitches_into_a_hole_made_before_are_counted_with_the_first_record()
    {
        var tape = Of(Header(4), Right1, Right1, Left1, Right1);

        var quirk = Quirk(tape, TapeRules.RepeatedPoints);

        (quirk.Count, quirk.Record, quirk.ByteOffset).ShouldBe((2, 2, 518L));
        ShouldNotShow(Of(Header(3), Right1, Right1, Right1), TapeRules.RepeatedPoints);
    }

    [Fact]
    public void Repeated_points_are_found_on_a_tape_far_larger_than_its_stitches()
    {
        var far = Enumerable.Repeat(JumpRight81, 30_000);
        var back = Enumerable.Repeat(new byte[] { 0x00, 0x00, 0x8B }, 30_000);
        var up = Enumerable.Repeat(new byte[] { 0x00, 0x00, 0xA3 }, 30_000);
        var down = Enumerable.Repeat(new byte[] { 0x00, 0x00, 0x93 }, 30_000);

        var tape = Of(Header(120_003), [Stitch0, .. far, .. up, Stitch0, .. back, .. down, Stitch0]);

        Quirk(tape, TapeRules.RepeatedPoints).Count.ShouldBe(1);
    }

    [Fact]
    public void A_stitch_without_length_is_one_that_follows_a_stitch()
    {
        var quirk = Quirk(Of(Header(3), Right1, Stitch0, Right1), TapeRules.ZeroStitches);

        (quirk.Count, quirk.Record).ShouldBe((1, 1));
        ShouldNotShow(Of(Header(4), Right1, JumpRight81, Stitch0, Right1), TapeRules.ZeroStitches);
        ShouldNotShow(Of(Header(3, stops: 1), Right1, Stop, Stitch0), TapeRules.ZeroStitches);
    }

    [Fact]
    public void Type_bits_without_a_meaning_are_reported_and_move_like_a_jump()
    {
        var tape = Of(Header(3), Right1, Unknown, Right1);

        (Quirk(tape, TapeRules.UnknownBits).Count, Quirk(tape, TapeRules.UnknownBits).Record).ShouldBe((1, 1));
        StitchSequence.Of(Read(tape), 1).Relations[1].ShouldBe(Relation.Cut);
        ShouldNotShow(Crest, TapeRules.UnknownBits);
    }

    [Fact]
    public void A_few_records_with_impossible_bits_are_reported_and_not_refused()
    {
        var tape = Of(Header(100), [.. Enumerable.Repeat(Right1, 99), Impossible]);

        Quirk(tape, TapeRules.UnknownBits).ByteOffset.ShouldBe(512 + (3 * 99));
        Read(tape).X[99].ShouldBe(99);
    }

    [Fact]
    public void Trims_are_unclear_when_more_than_a_fifth_of_the_floats_are_long()
    {
        var shortFloat = new[] { Jump0, Right1 };
        var longFloat = new[] { JumpRight81, Right1 };
        byte[][] oneInFive = [Right1, .. shortFloat, .. shortFloat, .. shortFloat, .. shortFloat, .. longFloat];
        byte[][] twoInSix = [.. oneInFive, .. longFloat];

        var quirk = Quirk(Of(Header(13), twoInSix), TapeRules.TrimsUnclear);

        (quirk.Count, quirk.Record).ShouldBe((2, 10));
        ShouldNotShow(Of(Header(11), oneInFive), TapeRules.TrimsUnclear);
    }

    [Fact]
    public void A_jump_group_that_the_machine_trims_is_no_float() =>
        ShouldNotShow(Of(Header(3), Right1, JumpRight81, Right1), TapeRules.TrimsUnclear, trimJumps: 1);

    [Fact]
    public void Jumps_before_the_first_stitch_are_no_float() =>
        ShouldNotShow(Of(Header(3), JumpRight81, JumpRight81, Right1), TapeRules.TrimsUnclear);

    private static Tape Read(byte[] bytes, int trimJumps = 3) =>
        TapeReader.Read(bytes, new() { TrimJumps = trimJumps }).Value.ShouldNotBeNull();

    private static TapeQuirk Quirk(byte[] bytes, string rule) =>
        Read(bytes).Quirks.Where(quirk => quirk.Rule == rule).ShouldHaveSingleItem();

    private static void ShouldNotShow(byte[] bytes, string rule, int trimJumps = 3) =>
        Read(bytes, trimJumps).Quirks.ShouldNotContain(quirk => quirk.Rule == rule);
}
