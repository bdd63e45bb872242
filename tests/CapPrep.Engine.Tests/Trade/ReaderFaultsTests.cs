using System.Text;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

/// <summary>A right body with one thing wrong: the fault comes back with its pointer, and nothing else does.</summary>
public sealed class ReaderFaultsTests
{
    [Theory]
    [InlineData("/id", "\"Six Panel\"", "/id", ViolationCodes.BadFormat)]
    [InlineData("/name", "\"\"", "/name", ViolationCodes.BadFormat)]
    [InlineData("/panels", "6.5", "/panels", ViolationCodes.WrongType)]
    [InlineData("/panels", "13", "/panels", ViolationCodes.OutOfRange)]
    [InlineData("/structure", "\"hard\"", "/structure", ViolationCodes.BadFormat)]
    [InlineData("/crownHeightMm", "\"170\"", "/crownHeightMm", ViolationCodes.WrongType)]
    [InlineData("/circumferenceMm", "58", "/circumferenceMm", ViolationCodes.OutOfRange)]
    [InlineData("/closure", "\"buckle\"", "/closure", ViolationCodes.BadFormat)]
    [InlineData("/brim/shape", "\"round\"", "/brim/shape", ViolationCodes.BadFormat)]
    [InlineData("/seams/0/kind", "\"back\"", "/seams/0/kind", ViolationCodes.BadFormat)]
    [InlineData("/seams/0/lineMm", "[[0, 0]]", "/seams/0/lineMm", ViolationCodes.OutOfRange)]
    [InlineData("/seams/0/lineMm", "[[0, 0], [0, 10, 20]]", "/seams/0/lineMm/1", ViolationCodes.WrongType)]
    [InlineData("/seams/0/lineMm", "[[0, 0], [0, 900]]", "/seams/0/lineMm/1/1", ViolationCodes.OutOfRange)]
    [InlineData("/techniques", "[\"flat\", \"print\"]", "/techniques/1", ViolationCodes.BadFormat)]
    [InlineData("/framingSteps", "[\"Seam on mark\"]", "/framingSteps/0", ViolationCodes.BadFormat)]
    [InlineData("/capColors", "[{ \"name\": \"Navy\", \"color\": \"navy\" }]", "/capColors/0/color", ViolationCodes.BadFormat)]
    [InlineData("/measured", "{ \"by\": \"Bench\", \"date\": \"5 October\" }", "/measured/date", ViolationCodes.BadFormat)]
    [InlineData("/zones", "[]", "/zones", ViolationCodes.OutOfRange)]
    [InlineData("/zones/1/location", "\"front\"", "/zones", ViolationCodes.Contradicts)]
    [InlineData("/zones/0/height", "{ \"warnAboveMm\": 64, \"holdAboveMm\": 63.5 }", "/zones/0/height/holdAboveMm", ViolationCodes.Contradicts)]
    [InlineData("/zones/0/topLine/1/xMm", "0", "/zones/0/topLine", ViolationCodes.Contradicts)]
    [InlineData("/zones/0/topLine/1/holdMm", "60", "/zones/0/topLine/1/holdMm", ViolationCodes.Contradicts)]
    [InlineData("/zones/0/brimClearance/warnBelowMm", "14", "/zones/0/brimClearance/warnBelowMm", ViolationCodes.Contradicts)]
    [InlineData("/version", "3", "/version", ViolationCodes.UnknownField)]
    public void A_cap_style(string edited, string json, string pointer, string code) =>
        Single(TradeReader.CapStyle(Edited.Style().With("/sources", "{ \"\": \"house\" }").With(edited, json)), pointer, code);

    /// <summary>Crossing itself, touching itself, on one line, there and back.</summary>
    [Theory]
    [InlineData("[[-75, 0], [75, 60], [75, 0], [-75, 60]]")]
    [InlineData("[[-75, 0], [75, 0], [0, 30], [75, 60], [-75, 60], [0, 30]]")]
    [InlineData("[[-75, 0], [0, 0], [75, 0]]")]
    [InlineData("[[-75, 0], [75, 0], [-75, 0]]")]
    public void A_zone_whose_outline_is_no_simple_polygon(string outline) =>
        Single(TradeReader.CapStyle(Edited.Style().With("/zones/0/outlineMm", outline)), "/zones/0/outlineMm", ViolationCodes.Contradicts);

    [Fact]
    public void A_closed_outline_is_read_open()
    {
        var style = TradeReader.CapStyle(Edited.Style().With("/zones/0/outlineMm", "[[-75, 0], [75, 0], [75, 60], [-75, 60], [-75, 0]]")).Value;

        style.ShouldNotBeNull().Zones[0].OutlineMm.Count.ShouldBe(4);
    }

    [Theory]
    [InlineData("/fieldMm/right", "-180", "/fieldMm/right", ViolationCodes.Contradicts)]
    [InlineData("/fieldMm/top", "10", "/fieldMm/top", ViolationCodes.Contradicts)]
    [InlineData("/holds", "\"magnet\"", "/holds", ViolationCodes.BadFormat)]
    [InlineData("/strapTopMm", "-1", "/strapTopMm", ViolationCodes.OutOfRange)]
    [InlineData("/postsXMm/1", "900", "/postsXMm/1", ViolationCodes.OutOfRange)]
    [InlineData("/locations", "[]", "/locations", ViolationCodes.OutOfRange)]
    [InlineData("/numbers", "[1]", "/numbers/0", ViolationCodes.WrongType)]
    [InlineData("/forStyles", "[\"-six\"]", "/forStyles/0", ViolationCodes.BadFormat)]
    [InlineData("/lowestStitchAboveBrimMm", "8", "/lowestStitchAboveBrimMm", ViolationCodes.UnknownField)]
    public void A_cap_frame(string edited, string json, string pointer, string code) =>
        Single(TradeReader.CapFrame(Edited.Frame.With("/sources", "{ \"\": \"house\" }").With(edited, json)), pointer, code);

    [Theory]
    [InlineData("/heads", "0", "/heads", ViolationCodes.OutOfRange)]
    [InlineData("/capFrames", "[]", "/capFrames", ViolationCodes.OutOfRange)]
    [InlineData("/speed/capSpm", "1100", "/speed/capSpm", ViolationCodes.Contradicts)]
    [InlineData("/tape/maxMoveMm", "12.2", "/tape/maxMoveMm", ViolationCodes.OutOfRange)]
    [InlineData("/tape/trim", "{ \"by\": \"jumps\" }", "/tape/trim/count", ViolationCodes.Required)]
    [InlineData("/tape/trim", "{ \"by\": \"hand\", \"count\": 3 }", "/tape/trim/count", ViolationCodes.Contradicts)]
    [InlineData("/tape/turn180", "\"nobody\"", "/tape/turn180", ViolationCodes.BadFormat)]
    [InlineData("/threads/1/needle", "1", "/threads", ViolationCodes.Contradicts)]
    [InlineData("/threads/1/needle", "13", "/threads", ViolationCodes.Contradicts)]
    [InlineData("/headsOff", "[9]", "/headsOff", ViolationCodes.Contradicts)]
    [InlineData("/headsOff", "[1, 2, 3, 4, 5, 6, 7, 8]", "/headsOff", ViolationCodes.Contradicts)]
    [InlineData("/headsOff", "[1.5]", "/headsOff/0", ViolationCodes.WrongType)]
    [InlineData("/headOffsets", "[{ \"head\": 9, \"xMm\": 0, \"yMm\": 0 }]", "/headOffsets", ViolationCodes.Contradicts)]
    public void A_machine(string edited, string json, string pointer, string code) =>
        Single(TradeReader.Machine(Edited.Machine.With("/sources", "{ \"\": \"house\" }").With(edited, json)), pointer, code);

    [Theory]
    [InlineData("/persons", "0", "/persons", ViolationCodes.OutOfRange)]
    [InlineData("/scatter/basis", "\"guess\"", "/scatter/basis", ViolationCodes.BadFormat)]
    [InlineData("/scatterByGroup/1/group", "\"F\"", "/scatterByGroup", ViolationCodes.Contradicts)]
    [InlineData("/tolerance/acceptMm", "1", "/tolerance/acceptMm", ViolationCodes.Contradicts)]
    [InlineData("/tolerance/customerMm", "2", "/tolerance/customerMm", ViolationCodes.Contradicts)]
    [InlineData("/tolerance/acceptDeg", "0.5", "/tolerance/acceptDeg", ViolationCodes.Contradicts)]
    [InlineData("/language", "\"fr\"", "/language", ViolationCodes.BadFormat)]
    public void A_framing_station(string edited, string json, string pointer, string code) =>
        Single(TradeReader.FramingStation(Edited.Station.With("/sources", "{ \"\": \"house\" }").With(edited, json)), pointer, code);

    [Theory]
    [InlineData("/shop", "\"Main\"", "/shop", ViolationCodes.BadFormat)]
    [InlineData("/paper", "\"a3\"", "/paper", ViolationCodes.BadFormat)]
    [InlineData("/units", "\"inch\"", "/units", ViolationCodes.BadFormat)]
    [InlineData("/language", "\"fr\"", "/language", ViolationCodes.BadFormat)]
    [InlineData("/defaults/threadWeightWt", "10", "/defaults/threadWeightWt", ViolationCodes.OutOfRange)]
    [InlineData("/inspection/aql", "2", "/inspection/aql", ViolationCodes.Contradicts)]
    [InlineData("/inspection/level", "\"2\"", "/inspection/level", ViolationCodes.BadFormat)]
    public void A_shop(string edited, string json, string pointer, string code) =>
        Single(TradeReader.Shop(Edited.Shop.With(edited, json)), pointer, code);

    [Fact]
    public void A_missing_member_is_named_in_every_resource()
    {
        Single(TradeReader.CapStyle(Edited.Style().Without("/stiffener").Without("/name")), "/name", ViolationCodes.Required);
        Single(TradeReader.CapFrame(Edited.Frame.Without("/holds")), "/holds", ViolationCodes.Required);
        Single(TradeReader.Machine(Edited.Machine.Without("/nudge")), "/nudge", ViolationCodes.Required);
        Single(TradeReader.FramingStation(Edited.Station.Without("/name")), "/name", ViolationCodes.Required);
        Single(TradeReader.Shop(Edited.Shop.Without("/defaults/machine")), "/defaults/machine", ViolationCodes.Required);
    }

    [Fact]
    public void Everything_that_is_wrong_comes_back_at_once()
    {
        var body = Edited.Style().With("/panels", "60").Without("/name").With("/colour", "1").With("/brim/bowMm", "-1");

        TradeReader.CapStyle(body).Violations.Select(violation => (violation.Pointer, violation.Code)).ShouldBe(
            [
                ("/name", ViolationCodes.Required),
                ("/panels", ViolationCodes.OutOfRange),
                ("/brim/bowMm", ViolationCodes.OutOfRange),
                ("/colour", ViolationCodes.Required),
                ("/colour", ViolationCodes.UnknownField),
            ],
            ignoreOrder: true);
    }

    [Theory]
    [InlineData("/sources", "{}", "/strapTopMm", ViolationCodes.Required)]
    [InlineData("/sources/~1strapTopMm", "\"section 12\"", "/sources/~1strapTopMm", ViolationCodes.UnknownId)]
    [InlineData("/sources/~1strapTopMm", "\"F99 F22\"", "/sources/~1strapTopMm", ViolationCodes.UnknownId)]
    [InlineData("/sources/~1strapTopMm", "\"F22 F99\"", "/sources/~1strapTopMm", ViolationCodes.UnknownId)]
    [InlineData("/sources/~1strapTopMm", "\"household\"", "/sources/~1strapTopMm", ViolationCodes.UnknownId)]
    [InlineData("/sources/~1strapBottomMm", "\"house\"", "/sources/~1strapBottomMm", ViolationCodes.Contradicts)]
    [InlineData("/sources/strapTopMm", "\"house\"", "/sources/strapTopMm", ViolationCodes.Contradicts)]
    public void Sources_that_say_nothing_are_faults(string edited, string json, string pointer, string code) =>
        TradeReader.CapFrame(Edited.Frame.With(edited, json)).Violations
            .ShouldContain(violation => violation.Pointer == pointer && violation.Code == code);

    [Theory]
    [InlineData("F22, F23: both")]
    [InlineData("house")]
    [InlineData("measured: ten caps, steel rule")]
    [InlineData("supplier's sheet of 2026")]
    [InlineData("from memory")]
    public void A_source_may_go_on_in_free_words(string source) =>
        TradeReader.CapFrame(Edited.Frame.With("/sources/~1strapTopMm", $"\"{source}\"")).Violations.ShouldBeEmpty();

    [Fact]
    public void Units_follow_the_paper_where_a_shop_is_silent()
    {
        TradeReader.Shop(Edited.Shop.Without("/units")).Value!.Units.ShouldBe(LengthUnits.Mm);
        TradeReader.Shop(Edited.Shop.Without("/units").With("/paper", "\"letter\"")).Value!.Units.ShouldBe(LengthUnits.MmInch);
        TradeReader.Shop(Edited.Shop.Without("/inspection")).Value!.Inspection.ShouldBe(ShopInspection.Usual);
    }

    [Fact]
    public void A_byte_order_mark_and_a_name_of_half_a_pair_are_taken_in_stride()
    {
        byte[] marked = [0xEF, 0xBB, 0xBF, .. Edited.Frame.Span];
        TradeReader.CapFrame(marked).Violations.ShouldBeEmpty();

        var half = Encoding.UTF8.GetString(Edited.Frame.Span).Replace("\"left\"", "\"\\ud800\"");
        TradeReader.CapFrame(Encoding.UTF8.GetBytes(half)).Violations.ShouldNotBeEmpty();
    }

    [Fact]
    public void Broken_bytes_are_refused_and_never_thrown_at() =>
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, int.MaxValue], Gen.Byte).Sample((which, at, value) =>
        {
            var whole = Whole[which % Whole.Length];
            var bytes = whole.Bytes.ToArray();
            bytes[at % bytes.Length] = value;
            whole.Read(bytes);
        });

    private static readonly (ReadOnlyMemory<byte> Bytes, Action<byte[]> Read)[] Whole =
    [
        (Edited.Style(), bytes => Consistent(TradeReader.CapStyle(bytes))),
        (Edited.Style("visor"), bytes => Consistent(TradeReader.CapStyle(bytes))),
        (Edited.Frame, bytes => Consistent(TradeReader.CapFrame(bytes))),
        (Edited.Machine, bytes => Consistent(TradeReader.Machine(bytes))),
        (Edited.Station, bytes => Consistent(TradeReader.FramingStation(bytes))),
        (Edited.Shop, bytes => Consistent(TradeReader.Shop(bytes))),
        (Examples.Bytes("rule-book.json"), bytes => Consistent(TradeReader.RuleBook(bytes, Embedded.HouseBook))),
    ];

    private static void Consistent<T>(ReadResult<T> result)
        where T : class =>
        result.Succeeded.ShouldBe(result.Violations.Count == 0);

    private static void Single<T>(ReadResult<T> result, string pointer, string code)
        where T : class
    {
        result.Violations.Select(violation => (violation.Pointer, violation.Code)).ShouldBe([(pointer, code)]);
        result.Violations[0].Part.ShouldBe("body");
    }
}
