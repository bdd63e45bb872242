using System.Text;
using CapPrep.Engine.Reading;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Reading;

public sealed class ObjectReaderTests
{
    private enum Seam
    {
        Center,
        LeftSide,
        Brim,
    }

    [Fact]
    public void Members_nobody_asked_for_are_named_with_all_that_are_known()
    {
        var fault = Bodies.Fault("""{"b":true,"qty":1}""", reader => (reader.Flag("b"), reader.Flag("a"), reader.Flag("B")));

        fault.Code.ShouldBe(ViolationCodes.UnknownField);
        fault.Pointer.ShouldBe("/qty");
        fault.Message.ShouldBe("A body has no field 'qty'.");
        fault.Allowed.ShouldBe(["B", "a", "b"]);
    }

    [Fact]
    public void A_member_that_stands_three_times_is_reported_once_and_its_last_value_is_read()
    {
        int? read = 0;
        var fault = Bodies.Fault("""{"a":1,"a":2,"\u0061":3}""", reader => read = reader.Integer("a", 0, 9));

        read.ShouldBe(3);
        fault.Code.ShouldBe(ViolationCodes.DuplicateField);
        fault.Pointer.ShouldBe("/a");
    }

    [Fact]
    public void Pointers_escape_tilde_and_slash()
    {
        Bodies.Fault("""{"a/b~c":1}""", reader => reader.Flag("x")).Pointer.ShouldBe("/a~1b~0c");
    }

    [Fact]
    public void A_name_that_is_no_text_is_a_fault_of_its_object()
    {
        var fault = Bodies.Fault("""{"a":{"\ud800":1}}""", reader => reader.Object("a", inner => inner.Names));

        fault.Code.ShouldBe(ViolationCodes.BadFormat);
        fault.Pointer.ShouldBe("/a");
    }

    [Fact]
    public void A_name_is_shown_shortened_and_without_control_characters()
    {
        Bodies.Fault($$"""{"{{new string('n', 70)}}":1}""", reader => reader.Flag("x")).Message
            .ShouldBe($"A body has no field '{new string('n', 57)}...'.");
        Bodies.Fault("""{"a\u0007b":1}""", reader => reader.Flag("x")).Message.ShouldBe("A body has no field 'a\uFFFDb'.");
    }

    [Fact]
    public void Missing_members_are_named_with_their_owner()
    {
        var faults = Bodies.Read(
            """{"inner":{}}""",
            reader => reader.Require("a").Object("inner", inner => inner.Require("b").Names)).Violations;

        faults.Select(fault => (fault.Pointer, fault.Code, fault.Message)).ShouldBe(
        [
            ("/a", ViolationCodes.Required, "A body needs a field 'a'."),
            ("/inner/b", ViolationCodes.Required, "This object needs a field 'b'."),
        ]);
    }

    [Fact]
    public void Null_is_a_fault_everywhere()
    {
        var faults = Bodies.Read(
            """{"a":null,"b":null,"c":null,"d":null,"e":null}""",
            reader => (reader.Text("a", 1), reader.Integer("b", 0, 1), reader.Number("c", 0, 1), reader.Flag("d"), reader.Texts("e", 1, 1)))
            .Violations;

        faults.Select(fault => fault.Pointer).ShouldBe(["/a", "/b", "/c", "/d", "/e"]);
        faults.ShouldAllBe(fault => fault.Code == ViolationCodes.WrongType && fault.Message == "A value expected, null found.");
    }

    [Fact]
    public void A_text_is_measured_in_scalar_values()
    {
        Bodies.Value(Quoted(Repeated("🧢", 64)), reader => reader.Text("a", 64)).ShouldBe(Repeated("🧢", 64));

        var fault = Bodies.Fault(Quoted(Repeated("🧢", 65)), reader => reader.Text("a", 64));
        fault.Code.ShouldBe(ViolationCodes.TooLong);
        fault.Message.ShouldBe("65 characters found, at most 64 allowed.");
        fault.Maximum.ShouldBe(64);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\\n")]
    [InlineData("a\\u0000b")]
    [InlineData("\\u007f")]
    [InlineData("\\u0085")]
    [InlineData("\\ud83e")]
    [InlineData("\\udde2\\ud83e")]
    public void A_text_without_content_with_control_characters_or_half_pairs_is_refused(string text)
    {
        var fault = Bodies.Fault($$"""{"a":"{{text}}"}""", reader => reader.Text("a", 64));

        fault.Code.ShouldBe(ViolationCodes.BadFormat);
        fault.Pointer.ShouldBe("/a");
    }

    [Theory]
    [InlineData("a", true)]
    [InlineData("0-a", true)]
    [InlineData("-a", false)]
    [InlineData("A", false)]
    [InlineData("a_b", false)]
    [InlineData("é", false)]
    public void An_id_holds_small_letters_digits_and_inner_hyphens(string text, bool id)
    {
        Bodies.Read(Quoted(text), reader => reader.Id("a")).Succeeded.ShouldBe(id);
    }

    [Theory]
    [InlineData("48", 48)]
    [InlineData("48.0", 48)]
    [InlineData("4.8e1", 48)]
    [InlineData("-0", 0)]
    public void A_whole_number_is_read_however_it_is_written(string json, int value)
    {
        Bodies.Value($$"""{"a":{{json}}}""", reader => reader.Integer("a", 0, 100)).ShouldBe(value);
    }

    [Theory]
    [InlineData("1.5", ViolationCodes.WrongType, "A whole number expected, the number 1.5 found.")]
    [InlineData("\"1\"", ViolationCodes.WrongType, "A whole number expected, a text found.")]
    [InlineData("-1", ViolationCodes.OutOfRange, "-1 is not between 0 and 100000.")]
    [InlineData("99999999999999999999", ViolationCodes.OutOfRange, "99999999999999999999 is not between 0 and 100000.")]
    [InlineData("1e400", ViolationCodes.OutOfRange, "1e400 is not between 0 and 100000.")]
    [InlineData("-1e999999999999", ViolationCodes.OutOfRange, "-1e999999999999 is not between 0 and 100000.")]
    public void A_number_that_is_not_wanted_is_shown_as_it_was_written(string json, string code, string message)
    {
        var fault = Bodies.Fault($$"""{"a":{{json}}}""", reader => reader.Integer("a", 0, 100_000));

        (fault.Code, fault.Message).ShouldBe((code, message));
    }

    [Fact]
    public void A_number_of_a_million_digits_is_refused_in_a_short_sentence()
    {
        var fault = Bodies.Fault($$"""{"a":{{new string('9', 1_000_000)}}}""", reader => reader.Number("a", 0, 1));

        fault.Code.ShouldBe(ViolationCodes.OutOfRange);
        fault.Message.Length.ShouldBeLessThan(100);
    }

    [Fact]
    public void Minus_zero_is_zero()
    {
        double.IsNegative(Bodies.Value("""{"a":-0.0}""", reader => reader.Number("a", -1, 1))!.Value).ShouldBeFalse();
    }

    [Fact]
    public void A_word_that_is_none_of_the_words_is_answered_with_all_of_them_sorted()
    {
        Bodies.Value(Quoted("leftSide"), reader => reader.Choice("a", Words<Seam>.Standard)).ShouldBe(Seam.LeftSide);

        var fault = Bodies.Fault(Quoted("LeftSide"), reader => reader.Choice("a", Words<Seam>.Standard));
        fault.Code.ShouldBe(ViolationCodes.BadFormat);
        fault.Message.ShouldBe("'LeftSide' is none of the words allowed here.");
        fault.Allowed.ShouldBe(["brim", "center", "leftSide"]);
    }

    [Theory]
    [InlineData("#1b2A5c", true)]
    [InlineData("#1B2A5", false)]
    [InlineData("#1B2A5C00", false)]
    [InlineData("1B2A5C0", false)]
    [InlineData("#1B2A5G", false)]
    public void A_color_has_six_hex_digits_and_comes_back_in_upper_case(string text, bool color)
    {
        var result = Bodies.Read(Quoted(text), reader => reader.Color("a"));

        result.Succeeded.ShouldBe(color);
        if (color)
            result.Value!.Value.ShouldBe("#1B2A5C");
        else
            result.Violations.Single().Message.ShouldBe("A color is written #RRGGBB.");
    }

    [Theory]
    [InlineData("2028-02-29", true)]
    [InlineData("2027-02-29", false)]
    [InlineData("2027-2-9", false)]
    [InlineData("2027-02-09T00:00:00Z", false)]
    public void A_day_is_one_that_the_calendar_has(string text, bool day)
    {
        var result = Bodies.Read(Quoted(text), reader => reader.Date("a"));

        result.Succeeded.ShouldBe(day);
        if (!day)
            result.Violations.Single().Message.ShouldBe("A day is written YYYY-MM-DD.");
    }

    [Fact]
    public void A_digest_comes_back_in_lower_case()
    {
        Bodies.Value(Quoted(Repeated("Af", 32)), reader => reader.Sha256("a")).ShouldBe(Repeated("af", 32));
        Bodies.Fault(Quoted(Repeated("a", 63)), reader => reader.Sha256("a")).Code.ShouldBe(ViolationCodes.BadFormat);
        Bodies.Fault(Quoted(Repeated("g", 64)), reader => reader.Sha256("a")).Code.ShouldBe(ViolationCodes.BadFormat);
    }

    [Theory]
    [InlineData("[]", "0 items found, 1 to 2 allowed.")]
    [InlineData("[\"a\",\"b\",\"c\"]", "3 items found, 1 to 2 allowed.")]
    public void An_array_of_the_wrong_length_is_one_fault(string json, string message)
    {
        var fault = Bodies.Fault(
            $$"""{"a":{{json}}}""",
            reader => reader.Items("a", 1, 2, (item, pointer) => reader.TextOf(item, pointer, 1)));

        (fault.Code, fault.Message, fault.Minimum, fault.Maximum).ShouldBe((ViolationCodes.OutOfRange, message, 1, 2));
    }

    [Fact]
    public void Every_faulty_item_is_reported_at_its_index()
    {
        Bodies.Read("""{"a":["b",1,"",null]}""", reader => reader.Texts("a", 9, 9)).Violations
            .Select(fault => fault.Pointer).ShouldBe(["/a/1", "/a/2", "/a/3"]);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("\"\\ud800\"")]
    [InlineData("{ \"a\" : 1.50,\n \"a\" : 1.5e0 }")]
    public void Verbatim_keeps_the_bytes_as_they_stand(string json)
    {
        var bytes = Bodies.Value($$"""{"a": {{json}} }""", reader => reader.Verbatim("a", 100, 8));

        Encoding.UTF8.GetString(bytes!.Value.Span).ShouldBe(json);
    }

    private static string Quoted(string text) => $$"""{"a":"{{text}}"}""";

    private static string Repeated(string text, int times) => string.Concat(Enumerable.Repeat(text, times));
}
