using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Tapes;

/// <summary>
/// Records worked out by hand from the published bit layout: EduTech Wiki, University of Geneva, "Embroidery format
/// DST". Byte 1 holds y+1 y-1 y+9 y-9 x-9 x+9 x-1 x+1 from its top bit down, byte 2 the same with 3 and 27, byte 3
/// jump, color, y+81 y-81 x-81 x+81 and two bits that are always set.
/// </summary>
public sealed class PublishedLayoutTests
{
    public static TheoryData<string, RecordKind, int, int> Records => new()
    {
        { "01 00 03", RecordKind.Stitch, 1, 0 },
        { "02 00 03", RecordKind.Stitch, -1, 0 },
        { "80 00 03", RecordKind.Stitch, 0, 1 },
        { "40 00 03", RecordKind.Stitch, 0, -1 },
        { "04 00 03", RecordKind.Stitch, 9, 0 },
        { "10 00 03", RecordKind.Stitch, 0, -9 },
        { "00 01 03", RecordKind.Stitch, 3, 0 },
        { "00 40 03", RecordKind.Stitch, 0, -3 },
        { "00 08 03", RecordKind.Stitch, -27, 0 },
        { "00 20 03", RecordKind.Stitch, 0, 27 },
        { "00 00 07", RecordKind.Stitch, 81, 0 },
        { "00 00 13", RecordKind.Stitch, 0, -81 },
        { "05 05 07", RecordKind.Stitch, 121, 0 },
        { "50 50 13", RecordKind.Stitch, 0, -121 },
        { "AA AA AB", RecordKind.Jump, -121, 121 },
        { "06 02 83", RecordKind.Jump, 5, 0 },
        { "00 00 C3", RecordKind.ColorStop, 0, 0 },

        // The worked example of another published description (technical page "DST design format", achatina.de).
        { "A8 12 23", RecordKind.Stitch, -12, 64 },
        { "A8 12 A3", RecordKind.Jump, -12, 64 },
    };

    [Theory]
    [MemberData(nameof(Records))]
    public void A_record_reads_as_its_published_bits_say(string hex, RecordKind kind, int dx, int dy)
    {
        var tape = Read(RawTape.Of(RawTape.Header(2), RawTape.Stitch0, Bytes(hex)));

        tape.Kinds[1].ShouldBe(kind);
        tape.PositionBehind(1).ShouldBe(new TapePoint(dx, dy));
    }

    [Theory]
    [MemberData(nameof(Records))]
    public void A_move_is_written_in_its_published_bits(string hex, RecordKind kind, int dx, int dy) =>
        TapeBuilder.Of(new TapeMove(kind, new(dx, dy)))[512..515].ShouldBe(Bytes(hex));

    [Fact]
    public void A_written_file_has_the_published_frame()
    {
        var file = TapeWriter.Write(new("CREST", [new(RecordKind.Jump, new(-50, 0)), new(RecordKind.Stitch, new(-40, 100)), new(RecordKind.ColorStop, new(-40, 100)), new(RecordKind.Stitch, new(20, -5))]));

        var header = System.Text.Encoding.ASCII.GetString(file, 0, 512);
        header.ShouldBe(
            "LA:CREST           \rST:      4\rCO:  1\r+X:   20\r-X:   40\r+Y:  100\r-Y:    5\rAX:+   20\rAY:-    5\rMX:+    0\rMY:+    0\rPD:******\r\u001A".PadRight(512));
        file[^4..].ShouldBe([0x00, 0x00, 0xF3, 0x1A]);
        file.Length.ShouldBe(512 + (4 * 3) + 4);
    }

    [Theory]
    [InlineData("A LABEL OF MORE THAN SIXTEEN", "A LABEL OF MORE")]
    [InlineData("Müller\tCap", "M_ller_Cap")]
    [InlineData("", "")]
    public void A_label_is_reduced_to_what_a_header_can_hold(string wanted, string written) =>
        Read(TapeWriter.Write(new(wanted, [new(RecordKind.Stitch, new(1, 1))]))).Header.Label.ShouldBe(written);

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", ""));

    private static Tape Read(byte[] bytes) => TapeReader.Read(bytes, TapeReading.Standard).Value.ShouldNotBeNull();
}
