using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade.Readers;

namespace CapPrep.Engine.Trade;

/// <summary>
/// Reads the bodies of catalog resources, rule books and shops: the value, or every fault with its pointer. A body
/// is the resource without what the service adds when it gives it back (version, by, at, retired). The lengths are
/// in millimeters, the unit is in a member's name or in the value's own documentation. Whether an id that a body
/// names exists is for the store to say.
/// </summary>
public static class TradeReader
{
    public static ReadResult<CapStyle> CapStyle(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, Of("A cap style"), reader => CapStyleReader.Read(reader, utf8));

    public static ReadResult<CapFrame> CapFrame(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, Of("A cap frame"), reader => CapFrameReader.Read(reader, utf8));

    public static ReadResult<Machine> Machine(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, Of("A machine"), reader => MachineReader.Read(reader, utf8));

    public static ReadResult<FramingStation> FramingStation(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, Of("A framing station"), reader => FramingStationReader.Read(reader, utf8));

    /// <summary>Reads a shop's book; its changes are checked against the built-in rows.</summary>
    public static ReadResult<RuleBook> RuleBook(ReadOnlyMemory<byte> utf8, HouseBook house) =>
        JsonBody.Read(utf8, Of("A rule book"), reader => RuleBookReader.Read(reader, house));

    /// <summary>A built-in rule book, such as an earlier version of this program's.</summary>
    public static ReadResult<HouseBook> HouseBook(ReadOnlyMemory<byte> utf8) => HouseBookReader.Read(utf8);

    public static ReadResult<Shop> Shop(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, Of("A shop"), ShopReader.Read);

    private static Faults Of(string noun) => new("body", noun);
}
