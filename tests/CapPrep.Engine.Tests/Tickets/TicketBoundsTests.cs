using CapPrep.Engine.Reading;
using Shouldly;
using Xunit;
using static CapPrep.Engine.Tests.Tickets.TicketJson;

namespace CapPrep.Engine.Tests.Tickets;

/// <summary>Every member of a ticket at its bounds, just outside them, with another type and as null.</summary>
public sealed class TicketBoundsTests
{
    private const string Hex64 = "\"0123456789abcdef0123456789abcdef0123456789ABCDEF0123456789ABCDEF\"";

    public static TheoryData<string, string> Accepted() =>
    [
        .. Each("orderNumber", Text(1), Text(64)),
        .. Each("capStyle", "\"a\"", Text(63), "\"0-a-9\""),
        .. Each("capSku", Text(1), Text(60), "\"AB/12 x\""),
        .. Each("quantity", "1", "100000", "48.0"),
        .. Each("line", Text(1), Text(32)),
        .. Each("orderLines", "1", "1000"),
        .. Each("customer", Text(1), Text(63)),
        .. Each("design", Text(1), Text(120)),
        .. Words("location", "front frontLeft frontRight left right back visor wrap"),
        .. Each("machine", Text(63)),
        .. Each("capFrame", Text(63)),
        .. Each("framingStation", Text(63)),
        .. Each("ruleBook", Text(63)),
        .. Each("seating", "{}"),
        .. Words("seating/by", "box origin"),
        .. Words("seating/centerBy", "box mainText weight origin"),
        .. Each("seating", """{"centerBy":"x","centerXMm":-200}""", """{"centerBy":"x","centerXMm":200}"""),
        .. Each("seating/baseAboveBrimMm", "0", "100"),
        .. Each("seating/offsetRightMm", "-200", "200"),
        .. Each("expectedSize/widthMm", "1", "400"),
        .. Each("expectedSize/heightMm", "1", "400"),
        .. Each("threads", "[{\"block\":1}]", Array(1000, n => $$"""{"block":{{n}}}""")),
        .. Thread("name", Text(1), Text(60)),
        .. Thread("color", "\"#09afAF\""),
        .. Thread("code", Text(1), Text(40)),
        .. Thread("weightWt", "20", "100"),
        .. Thread("kind", Quoted("polyester rayon metallic matte cotton")),
        .. Thread("foam", "true", "false"),
        .. Thread("action", Quoted("none layFoam placePatch trimFabric pause")),
        .. Each("sewOrder", "{}"),
        .. Words("sewOrder/mode", "asReceived ifBetter always"),
        .. Each("sewOrder/allowExtraColorChanges", "0", "20"),
        .. Each("sewOrder/allowExtraTrims", "0", "200"),
        .. Each("sewOrder/extraMinutes", "0", "600", "0.25"),
        .. Each("dueDate", "\"2026-12-04\"", "\"2028-02-29\""),
        .. Words("technique", "flat foam partFoam applique patch"),
        .. Words("tapeIs", "upright turned"),
        .. Each("capColor/name", Text(1), Text(60)),
        .. Each("capColor/color", "\"#000000\""),
        .. Each("capLots", "[{\"quantity\":48}]"),
        .. Each("capLots", Lot("capSku", Text(60)), Lot("capColor", "{\"name\":\"Black\"}"), Lot("threads", "[{\"block\":1}]")),
        .. Each("capLots", Lot("sizes", """[{"size":"x","quantity":1},{"size":"xxxxxxxxxxxxxxxxxxxx","quantity":100000}]""")),
        .. Each("blanks", "1", "100000"),
        .. Each("digitizer", Text(1), Text(60)),
        .. Words("inspection", "loads aql"),
        .. Each("tapeSha256", Hex64),
        .. Each("echo", "null", "0", "\"\"", "[[[[[[[[1]]]]]]]]", Text(4094)),
    ];

    [Theory]
    [MemberData(nameof(Accepted))]
    public void A_value_inside_its_bounds_is_read(string path, string value) =>
        Read(With(Member(path, value))).Violations.ShouldBeEmpty();

    public static TheoryData<string, string, string> Refused() =>
    [
        .. LongText("orderNumber", 65),
        .. Id("capStyle"),
        .. LongText("capSku", 61),
        .. Whole("quantity", "0", "100001"),
        .. LongText("line", 33),
        .. Whole("orderLines", "0", "1001"),
        .. Id("customer"),
        .. LongText("design", 121),
        .. Word("location"),
        .. Id("machine"),
        .. Id("capFrame"),
        .. Id("framingStation"),
        .. Id("ruleBook"),
        .. Other("seating"),
        .. Word("seating/by"),
        .. Word("seating/centerBy"),
        .. Number("seating/baseAboveBrimMm", "-0.1", "100.1"),
        .. Number("seating/offsetRightMm", "-200.1", "200.1"),
        .. Other("expectedSize"),
        .. Number("expectedSize/widthMm", "0.9", "400.1"),
        .. Number("expectedSize/heightMm", "0.9", "400.1"),
        .. Other("threads"),
        .. Case("threads", ViolationCodes.OutOfRange, "[]", Array(1001, n => $$"""{"block":{{n % 1000 + 1}}}""")),
        .. Other("threads/0"),
        .. Whole("threads/0/block", "0", "1001"),
        .. LongText("threads/0/name", 61),
        .. Color("threads/0/color"),
        .. LongText("threads/0/code", 41),
        .. Whole("threads/0/weightWt", "19", "101"),
        .. Word("threads/0/kind"),
        .. Other("threads/0/foam"),
        .. Word("threads/0/action"),
        .. Other("sewOrder"),
        .. Word("sewOrder/mode"),
        .. Whole("sewOrder/allowExtraColorChanges", "-1", "21"),
        .. Whole("sewOrder/allowExtraTrims", "-1", "201"),
        .. Number("sewOrder/extraMinutes", "-0.1", "600.1"),
        .. Other("dueDate"),
        .. Case("dueDate", ViolationCodes.BadFormat, "\"2027-02-29\"", "\"04.12.2026\"", "\"2026-12-04T00:00:00Z\"", "\"\""),
        .. Word("technique"),
        .. Word("tapeIs"),
        .. Other("capColor"),
        .. LongText("capColor/name", 61),
        .. Color("capColor/color"),
        .. Other("capLots"),
        .. Case("capLots", ViolationCodes.OutOfRange, "[]", Array(51, _ => """{"quantity":1}""")),
        .. Other("capLots/0"),
        .. LongText("capLots/0/capSku", 61),
        .. Other("capLots/0/capColor"),
        .. Other("capLots/0/sizes"),
        .. Case("capLots/0/sizes", ViolationCodes.OutOfRange, "[]", Array(51, _ => """{"size":"S","quantity":1}""")),
        .. LongText("capLots/0/sizes/0/size", 21),
        .. Whole("capLots/0/sizes/0/quantity", "0", "100001"),
        .. Whole("capLots/0/quantity", "0", "100001"),
        .. Other("capLots/0/threads"),
        .. Whole("capLots/0/threads/0/block", "0", "1001"),
        .. Whole("blanks", "0", "100001"),
        .. LongText("digitizer", 61),
        .. Word("inspection"),
        .. Other("tapeSha256"),
        .. Case("tapeSha256", ViolationCodes.BadFormat, Text(64), "\"abcdef\"", "\"\""),
        .. Case("echo", ViolationCodes.TooLong, Text(4095), "[[[[[[[[[1]]]]]]]]]"),
    ];

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_value_outside_its_bounds_is_refused_at_its_pointer(string path, string value, string code)
    {
        var violations = Read(With(Member(path, value))).Violations;

        violations.Where(fault => fault.Pointer == "/" + path).Select(fault => fault.Code).ShouldBe([code]);
        violations.ShouldAllBe(fault => fault.Part == "ticket" && fault.Message.EndsWith('.'));
    }

    [Theory]
    [InlineData("-200.1", ViolationCodes.OutOfRange)]
    [InlineData("200.1", ViolationCodes.OutOfRange)]
    [InlineData("1e400", ViolationCodes.OutOfRange)]
    [InlineData("\"4\"", ViolationCodes.WrongType)]
    [InlineData("null", ViolationCodes.WrongType)]
    public void The_x_to_center_on_has_bounds_too(string value, string code)
    {
        var fault = Read(With($$"""  "seating":{"centerBy":"x","centerXMm":{{value}}}  """)).Violations.Single();

        (fault.Pointer, fault.Code).ShouldBe(("/seating/centerXMm", code));
    }

    private static IEnumerable<TheoryDataRow<string, string>> Each(string path, params string[] values) =>
        values.Select(value => new TheoryDataRow<string, string>(path, value));

    private static IEnumerable<TheoryDataRow<string, string>> Words(string path, string words) => Each(path, Quoted(words));

    private static IEnumerable<TheoryDataRow<string, string>> Thread(string name, params string[] values) =>
        Each("threads", [.. values.Select(value => $$"""[{"block":1,"{{name}}":{{value}}}]""")]);

    private static string Lot(string name, string value) => $$"""[{"quantity":48,"{{name}}":{{value}}}]""";

    private static string[] Quoted(string words) => [.. words.Split(' ').Select(word => $"\"{word}\"")];

    private static IEnumerable<TheoryDataRow<string, string, string>> Case(string path, string code, params string[] values) =>
        values.Select(value => new TheoryDataRow<string, string, string>(path, value, code));

    private static IEnumerable<TheoryDataRow<string, string, string>> Other(string path) =>
        Case(path, ViolationCodes.WrongType, "4", "null");

    private static IEnumerable<TheoryDataRow<string, string, string>> LongText(string path, int tooLong) =>
    [
        .. Other(path),
        .. Case(path, ViolationCodes.TooLong, Text(tooLong)),
        .. Case(path, ViolationCodes.BadFormat, "\"\"", "\"a\\tb\""),
    ];

    private static IEnumerable<TheoryDataRow<string, string, string>> Id(string path) =>
    [
        .. LongText(path, 64),
        .. Case(path, ViolationCodes.BadFormat, "\"-a\"", "\"Ab\"", "\"a b\""),
    ];

    private static IEnumerable<TheoryDataRow<string, string, string>> Number(string path, params string[] outside) =>
    [
        .. Case(path, ViolationCodes.WrongType, "\"4\"", "null", "true", "[1]"),
        .. Case(path, ViolationCodes.OutOfRange, [.. outside, "1e400", "-1e999999999999"]),
    ];

    private static IEnumerable<TheoryDataRow<string, string, string>> Whole(string path, params string[] outside) =>
        [.. Number(path, outside), .. Case(path, ViolationCodes.WrongType, "20.5")];

    private static IEnumerable<TheoryDataRow<string, string, string>> Word(string path) =>
        [.. Other(path), .. Case(path, ViolationCodes.BadFormat, "\"Front\"", "\"\"", "\"0\"")];

    private static IEnumerable<TheoryDataRow<string, string, string>> Color(string path) =>
        [.. Other(path), .. Case(path, ViolationCodes.BadFormat, "\"#12345\"", "\"#1234567\"", "\"#12345G\"", "\"navy\"")];

    /// <summary><c>a/0/b</c> and 5 give <c>"a":[{"b":5}]</c>.</summary>
    private static string Member(string path, string value)
    {
        var steps = path.Split('/');
        foreach (var step in steps.Skip(1).Reverse())
            value = step == "0" ? $"[{value}]" : $"{{\"{step}\":{value}}}";
        return $"\"{steps[0]}\":{value}";
    }
}
