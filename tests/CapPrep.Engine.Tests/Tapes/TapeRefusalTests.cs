using System.Text;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using CsCheck;
using Shouldly;
using Xunit;
using static CapPrep.TestKit.Tapes.RawTape;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class TapeRefusalTests
{
    private static readonly byte[] Crest = TapeBuilder.Crest().ToBytes("CREST");

    [Fact]
    public void An_empty_file_is_refused() => ShouldRefuse([], ViolationCodes.TapeEmpty, 0);

    [Theory]
    [InlineData(3)]
    [InlineData(407)]
    [InlineData(514)]
    public void A_file_shorter_than_header_and_record_is_refused_at_its_end(int length)
    {
        ShouldRefuse(Crest[..length], ViolationCodes.TapeTooShort, length);
        TapeReader.Read(Crest[..length], TapeReading.Standard).Violations[0].Message.ShouldContain($"byte {length}");
    }

    [Fact]
    public void The_shortest_tape_is_read() => Read([.. Header(1), .. Right1]).Succeeded.ShouldBeTrue();

    [Theory]
    [InlineData("Sew this on twelve caps, please.", "text")]
    [InlineData("{\"orderNumber\":\"4711\"}", "JSON text")]
    [InlineData("  [1, 2, 3]", "JSON text")]
    [InlineData("<?xml version=\"1.0\"?><order/>", "XML text")]
    [InlineData("Größe: 7 ¼", "text")]
    public void Text_of_any_length_is_named_as_text(string text, string noun)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        byte[] longer = [.. bytes, .. Encoding.UTF8.GetBytes(new string('\n', 600))];

        ShouldRefuse(bytes, ViolationCodes.TapeIsText, 0);
        ShouldRefuse(longer, ViolationCodes.TapeIsText, 0);
        Read(bytes).Violations[0].Message.ShouldBe($"The file is {noun}, not a tape.");
    }

    [Fact]
    public void Text_in_an_older_alphabet_or_in_two_byte_letters_is_named_as_text()
    {
        ShouldRefuse(Encoding.Latin1.GetBytes("Stickerei Müller, Größe 58, zwölf Kappen"), ViolationCodes.TapeIsText, 0);
        ShouldRefuse([0xFF, 0xFE, .. Encoding.Unicode.GetBytes("caps")], ViolationCodes.TapeIsText, 0);
    }

    [Theory]
    [InlineData("504B0304", "a ZIP archive")]
    [InlineData("1F8B08", "a gzip archive")]
    [InlineData("377ABCAF271C", "a 7z archive")]
    [InlineData("FD377A585A00", "an xz archive")]
    [InlineData("28B52FFD", "a Zstandard archive")]
    [InlineData("526172211A07", "a RAR archive")]
    public void An_archive_is_named(string signature, string noun) =>
        ShouldName(signature, ViolationCodes.TapeIsArchive, noun);

    [Theory]
    [InlineData("89504E470D0A1A0A", "a PNG picture")]
    [InlineData("FFD8FFE0", "a JPEG picture")]
    [InlineData("474946383961", "a GIF picture")]
    [InlineData("255044462D312E37", "a PDF document")]
    [InlineData("49492A00", "a TIFF picture")]
    [InlineData("524946460000000057454250", "a WebP picture")]
    public void A_picture_is_named(string signature, string noun) =>
        ShouldName(signature, ViolationCodes.TapeIsPicture, noun);

    [Fact]
    public void A_drawing_in_text_is_a_picture() => ShouldRefuse(
        "<?xml version=\"1.0\"?>\n<svg width=\"10\"/>"u8.ToArray(), ViolationCodes.TapeIsPicture, 0);

    [Fact]
    public void A_tape_whose_header_alone_is_left_is_too_short_and_not_text() =>
        ShouldRefuse(Crest[..512], ViolationCodes.TapeTooShort, 512);

    [Fact]
    public void A_header_without_a_stitch_is_refused_at_the_first_record()
    {
        ShouldRefuse(Of(Header(0)), ViolationCodes.NoStitch, 512);
        ShouldRefuse(Of(Header(3, stops: 1), JumpRight81, Stop, JumpRight81), ViolationCodes.NoStitch, 512);
    }

    [Theory]
    [InlineData("03 00 03")]
    [InlineData("00 30 03")]
    [InlineData("00 00 0F")]
    [InlineData("01 00 02")]
    [InlineData("01 00 00")]
    public void More_than_one_record_in_a_hundred_with_impossible_bits_is_refused_at_the_first(string hex)
    {
        var impossible = Convert.FromHexString(hex.Replace(" ", ""));
        var tape = Of(Header(100), [.. Enumerable.Repeat(Right1, 98), impossible, impossible]);

        ShouldRefuse(tape, ViolationCodes.ImpossibleRecords, 512 + (3 * 98));
    }

    [Fact]
    public void Every_fault_is_told() =>
        Read(Of(Header(2), [0x00, 0x00, 0x80], [0x00, 0x00, 0x80])).Violations.Select(fault => fault.Code)
            .ShouldBe([ViolationCodes.ImpossibleRecords, ViolationCodes.NoStitch]);

    [Fact]
    public void The_first_record_too_many_is_named()
    {
        var tape = Of(Header(11), Enumerable.Repeat(Right1, 11));

        var refused = TapeReader.Read(tape, new() { MaxRecords = 10 });

        refused.Violations.ShouldHaveSingleItem().Code.ShouldBe(ViolationCodes.TooManyRecords);
        refused.Violations[0].ByteOffset.ShouldBe(512 + (3 * 10));
        TapeReader.Read(tape, new() { MaxRecords = 11 }).Succeeded.ShouldBeTrue();
    }

    [Fact]
    public void A_random_file_is_refused_naming_the_byte() => Gen.Byte.Array[600, 5000].Sample(
        bytes =>
        {
            var refused = Read(bytes);
            refused.Succeeded.ShouldBeFalse();
            refused.Violations.ShouldAllBe(fault => fault.Part == "tape" && fault.ByteOffset >= 0 && fault.ByteOffset <= bytes.Length);
        },
        iter: 500,
        seed: "0N0XIzNsQ0O2");

    private static ReadResult<Tape> Read(byte[] bytes) => TapeReader.Read(bytes, TapeReading.Standard);

    private static void ShouldName(string signature, string code, string noun)
    {
        var bytes = Convert.FromHexString(signature);
        byte[] longer = [.. bytes, .. new byte[600]];
        ShouldRefuse(bytes, code, 0);
        ShouldRefuse(longer, code, 0);
        Read(longer).Violations[0].Message.ShouldBe($"The file is {noun}, not a tape.");
    }

    private static void ShouldRefuse(byte[] bytes, string code, long offset)
    {
        var fault = Read(bytes).Violations.ShouldHaveSingleItem();
        (fault.Part, fault.Code, fault.ByteOffset).ShouldBe(("tape", code, offset));
    }
}
