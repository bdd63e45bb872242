using System.Text;
using CapPrep.Engine.Tickets;
using CsCheck;

namespace CapPrep.Engine.Tests.Tickets;

/// <summary>Tickets that could have been read: every member within its bounds, each there or not.</summary>
internal static class AnyTicket
{
    private static readonly Gen<string> Letters =
        Gen.OneOf("a", "Z", "7", " ", "é", "漢", "🧢", "\"", "\\", "/", "<", "&", "'", "\u2028", "\uFFFD");

    private static readonly Gen<string> Ids = Gen.Char["abc019"].Array[1, 63].Select(chars => new string(chars));

    private static readonly Gen<string> Colors = Gen.Int[0, 0xFFFFFF].Select(rgb => $"#{rgb:X6}");

    private static readonly Gen<int> Caps = Gen.Int[1, TicketReader.MostCaps];

    private static readonly Gen<NamedColor> CapColors = Gen.Select(
        Maybe(Text(60)), Colors, Gen.Bool, (name, color, both) => new NamedColor(name, both || name is null ? color : null));

    private static readonly Gen<TicketThread> Threads = Changed(
        new TicketThread { Block = 1 },
        Change<TicketThread, int>(Gen.Int[1, 1_000], (t, v) => t with { Block = v }),
        Change<TicketThread, string>(Text(60), (t, v) => t with { Name = v }),
        Change<TicketThread, string>(Colors, (t, v) => t with { Color = v }),
        Change<TicketThread, string>(Text(40), (t, v) => t with { Code = v }),
        Change<TicketThread, int>(Gen.Int[20, 100], (t, v) => t with { WeightWt = v }),
        Change<TicketThread, ThreadKind>(Gen.Enum<ThreadKind>(), (t, v) => t with { Kind = v }),
        Change<TicketThread, bool>(Gen.Bool, (t, v) => t with { Foam = v }),
        Change<TicketThread, StopAction>(Gen.Enum<StopAction>(), (t, v) => t with { Action = v }));

    private static readonly Gen<IReadOnlyList<TicketThread>> ThreadLists =
        Threads.Array[1, 6].Select(IReadOnlyList<TicketThread> (threads) => [.. threads.DistinctBy(thread => thread.Block)]);

    private static readonly Gen<CapLot> Lots = Changed(
        new CapLot { Quantity = 1 },
        Change<CapLot, int>(Gen.Int[1, 2_000], (t, v) => t with { Quantity = v }),
        Change<CapLot, string>(Text(60), (t, v) => t with { CapSku = v }),
        Change<CapLot, NamedColor>(CapColors, (t, v) => t with { CapColor = v }),
        Change<CapLot, LotSize[]>(Gen.Select(Text(20), Caps, (size, caps) => new LotSize(size, caps)).Array[1, 4], (t, v) => t with { Sizes = v }),
        Change<CapLot, IReadOnlyList<TicketThread>>(ThreadLists, (t, v) => t with { Threads = v }));

    private static readonly Gen<TicketSeating> Seatings = Changed(
        new TicketSeating { By = SeatingBase.Origin },
        Change<TicketSeating, SeatingBase>(Gen.Enum<SeatingBase>(), (t, v) => t with { By = v }),
        Change<TicketSeating, SeatingCenter>(
            Gen.OneOf(SeatingCenter.Box, SeatingCenter.MainText, SeatingCenter.Weight, SeatingCenter.Origin),
            (t, v) => t with { CenterBy = v }),
        Change<TicketSeating, double>(Lengths(-200, 200), (t, v) => t with { CenterBy = SeatingCenter.X, CenterXMm = v }),
        Change<TicketSeating, double>(Lengths(0, 100), (t, v) => t with { BaseAboveBrimMm = v }),
        Change<TicketSeating, double>(Lengths(-200, 200), (t, v) => t with { OffsetRightMm = v }));

    private static readonly Gen<TicketSewOrder> SewOrders = Changed(
        new TicketSewOrder { AllowExtraTrims = 0 },
        Change<TicketSewOrder, SewOrderMode>(Gen.Enum<SewOrderMode>(), (t, v) => t with { Mode = v }),
        Change<TicketSewOrder, int>(Gen.Int[0, 20], (t, v) => t with { AllowExtraColorChanges = v }),
        Change<TicketSewOrder, int>(Gen.Int[0, 200], (t, v) => t with { AllowExtraTrims = v }),
        Change<TicketSewOrder, double>(Lengths(0, 600), (t, v) => t with { ExtraMinutes = v }));

    private static readonly Gen<ExpectedSize> Sizes = Gen.Select(
        Maybe(Lengths(1, 400).Select(value => (object)value)), Lengths(1, 400), Gen.Bool,
        (width, height, both) => new ExpectedSize((double?)width, both || width is null ? height : null));

    private static readonly Gen<ReadOnlyMemory<byte>> Echoes = Gen
        .OneOf("null", "-0.50e+1", "\"\\u00e9\\ud800\"", "{ \"a\" : [ 1 ,\n2 ] , \"a\" : {} }", "[[[[[[[[]]]]]]]]", "\"é🧢\"")
        .Select(json => new ReadOnlyMemory<byte>(Encoding.UTF8.GetBytes(json)));

    public static readonly Gen<Ticket> WithoutEcho = Changed(
        new Ticket { OrderNumber = "A", CapStyle = "a", Quantity = 1 },
        Change<Ticket, string>(Text(64), (t, v) => t with { OrderNumber = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { CapStyle = v }),
        Change<Ticket, string>(Text(60), (t, v) => t with { CapSku = v, CapStyle = null }),
        Change<Ticket, int>(Caps, (t, v) => t with { Quantity = v }),
        Change<Ticket, string>(Text(32), (t, v) => t with { Line = v }),
        Change<Ticket, int>(Gen.Int[1, 1_000], (t, v) => t with { OrderLines = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { Customer = v }),
        Change<Ticket, string>(Text(120), (t, v) => t with { Design = v }),
        Change<Ticket, CapLocation>(Gen.Enum<CapLocation>(), (t, v) => t with { Location = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { Machine = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { CapFrame = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { FramingStation = v }),
        Change<Ticket, string>(Ids, (t, v) => t with { RuleBook = v }),
        Change<Ticket, TicketSeating>(Seatings, (t, v) => t with { Seating = v }),
        Change<Ticket, ExpectedSize>(Sizes, (t, v) => t with { ExpectedSize = v }),
        Change<Ticket, IReadOnlyList<TicketThread>>(ThreadLists, (t, v) => t with { Threads = v }),
        Change<Ticket, TicketSewOrder>(SewOrders, (t, v) => t with { SewOrder = v }),
        Change<Ticket, DateOnly>(Gen.Int[0, 3_652_058].Select(DateOnly.FromDayNumber), (t, v) => t with { DueDate = v }),
        Change<Ticket, Technique>(Gen.Enum<Technique>(), (t, v) => t with { Technique = v }),
        Change<Ticket, TapeOrientation>(Gen.Enum<TapeOrientation>(), (t, v) => t with { TapeIs = v }),
        Change<Ticket, NamedColor>(CapColors, (t, v) => t with { CapColor = v }),
        Change<Ticket, CapLot[]>(Lots.Array[1, 5], (t, v) => t with { CapLots = v, Quantity = v.Sum(lot => lot.Quantity) }),
        Change<Ticket, int>(Caps, (t, v) => t with { Blanks = v }),
        Change<Ticket, string>(Text(60), (t, v) => t with { Digitizer = v }),
        Change<Ticket, InspectionPlan>(Gen.Enum<InspectionPlan>(), (t, v) => t with { Inspection = v }),
        Change<Ticket, string>(Gen.Char["0123456789abcdef"].Array[64].Select(chars => new string(chars)), (t, v) => t with { TapeSha256 = v }));

    public static readonly Gen<Ticket> WithAnything = Gen.Select(
        WithoutEcho, Change<Ticket, ReadOnlyMemory<byte>>(Echoes, (t, v) => t with { Echo = v }), (ticket, change) => change(ticket));

    /// <summary>Equal member by member; lists by their items, the caller's own JSON by its bytes.</summary>
    public static bool Same(Ticket a, Ticket b) =>
        Bare(a) == Bare(b)
        && SameItems(a.Threads, b.Threads)
        && SameItems(a.CapLots?.Select(Bare), b.CapLots?.Select(Bare))
        && SameItems(a.CapLots?.SelectMany(lot => lot.Sizes), b.CapLots?.SelectMany(lot => lot.Sizes))
        && SameItems(a.CapLots?.SelectMany(lot => lot.Threads), b.CapLots?.SelectMany(lot => lot.Threads))
        && SameItems(a.Echo?.ToArray(), b.Echo?.ToArray());

    private static Ticket Bare(Ticket ticket) => ticket with { Threads = null, CapLots = null, Echo = null };

    private static (string?, NamedColor?, int, int, int) Bare(CapLot lot) =>
        (lot.CapSku, lot.CapColor, lot.Quantity, lot.Sizes.Count, lot.Threads.Count);

    private static bool SameItems<T>(IEnumerable<T>? a, IEnumerable<T>? b) =>
        a is null ? b is null : b is not null && a.SequenceEqual(b);

    private static Gen<string> Text(int longest) => Letters.Array[1, longest].Select(string.Concat);

    private static Gen<double> Lengths(double least, double greatest) =>
        Gen.OneOf(Gen.Double[least, greatest], Gen.Int[(int)least, (int)greatest].Select(value => (double)value))
            .Select(value => value == 0 ? 0 : value);

    private static Gen<T?> Maybe<T>(Gen<T> values)
        where T : class =>
        Gen.Select(Gen.Bool, values, (given, value) => given ? value : null);

    private static Gen<Func<T, T>> Change<T, TValue>(Gen<TValue> values, Func<T, TValue, T> set) =>
        Gen.Select(Gen.Bool, values, Func<T, T> (given, value) => given ? old => set(old, value) : old => old);

    private static Gen<T> Changed<T>(T start, params Gen<Func<T, T>>[] changes) =>
        changes.Aggregate(Gen.Const(start), (values, change) => Gen.Select(values, change, (value, apply) => apply(value)));
}
