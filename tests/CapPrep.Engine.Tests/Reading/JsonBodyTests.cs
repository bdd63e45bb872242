using System.Text;
using CapPrep.Engine.Reading;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Reading;

public sealed class JsonBodyTests
{
    [Theory]
    [InlineData("", 0)]
    [InlineData("  ", 2)]
    [InlineData("{\"a\":1", 6)]
    [InlineData("{\"a\":1,}", 7)]
    [InlineData("{\n  \"a\": 1\n  \"b\": 2 }", 13)]
    [InlineData("{\r\n\"a\": 1 x", 10)]
    [InlineData("{\"a\":1} {}", 8)]
    [InlineData("{\"a\":NaN}", 5)]
    [InlineData("{\"a\":01}", 6)]
    [InlineData("{/**/}", 1)]
    [InlineData("{'a':1}", 1)]
    public void Broken_syntax_is_reported_at_its_byte(string json, long offset)
    {
        var fault = Bodies.Fault(json, reader => reader.Flag("a"));

        fault.Code.ShouldBe(ViolationCodes.BadFormat);
        fault.ByteOffset.ShouldBe(offset);
        fault.Pointer.ShouldBeNull();
    }

    [Fact]
    public void Bytes_that_are_no_UTF8_are_reported_at_the_first_of_them()
    {
        byte[] json = [.. "{\"é\":\""u8, 0xC3, 0x28, .. "\"}"u8];

        var fault = Bodies.Read(json, reader => reader.Flag("a")).Violations.Single();

        fault.ByteOffset.ShouldBe(7);
        fault.Message.ShouldContain("UTF-8");
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over_and_counted_in_offsets()
    {
        Bodies.Value("\uFEFF{\"a\":true}", reader => reader.Flag("a")).ShouldBe(true);
        Bodies.Fault("\uFEFF{\"a\":", reader => reader.Flag("a")).ByteOffset.ShouldBe(8);
        Bodies.Fault("\uFEFF{\n\"a\":x", reader => reader.Flag("a")).ByteOffset.ShouldBe(9);
    }

    [Theory]
    [InlineData("[]", "an array")]
    [InlineData("null", "null")]
    [InlineData("4", "the number 4")]
    [InlineData("\"{}\"", "a text")]
    public void A_body_that_is_no_object_is_refused_as_a_whole(string json, string found)
    {
        var fault = Bodies.Fault(json, reader => reader.Flag("a"));

        fault.Code.ShouldBe(ViolationCodes.WrongType);
        fault.Pointer.ShouldBe("");
        fault.Message.ShouldBe($"An object expected, {found} found.");
    }

    [Theory]
    [InlineData(31, true)]
    [InlineData(32, false)]
    [InlineData(1_000_000, false)]
    public void Nesting_is_read_to_32_levels_and_refused_beyond(int levels, bool read)
    {
        var json = "{\"a\":" + new string('[', levels) + new string(']', levels) + "}";

        var result = Bodies.Read(json, reader => reader.Verbatim("a", int.MaxValue, int.MaxValue).HasValue);

        result.Succeeded.ShouldBe(read);
        if (!read)
            result.Violations.Single().ByteOffset.ShouldBe(5 + 31);
    }

    [Fact]
    public void Any_bytes_give_a_value_or_faults()
    {
        Gen.Byte.Array[0, 60].Sample(bytes => Answers(bytes));
        Gen.OneOf(
                Gen.Char["{}[]\":,\\u09dDeEnat.- "].Array[0, 40].Select(chars => new string(chars)),
                Gen.Char["{}[]\":,a1"].Array[0, 12].Select(chars => new string(chars)))
            .Sample(text => Answers(Encoding.UTF8.GetBytes(text)));
    }

    private static bool Answers(byte[] bytes)
    {
        var result = Bodies.Read(bytes, reader => reader.Text("a", 5));
        return result.Succeeded != result.Violations.Any();
    }
}
