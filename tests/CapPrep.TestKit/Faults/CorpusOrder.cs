using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.FaultCorpus;

namespace CapPrep.TestKit.Faults;

/// <summary>Turns a tape of the fault corpus into a question for the engine, with the starter catalog.</summary>
public static class CorpusOrder
{
    /// <exception cref="InvalidOperationException">The tape is refused.</exception>
    public static PrepareRequest Request(CorpusTape tape) => Request(tape.Bytes, tape.Ticket);

    /// <exception cref="InvalidOperationException">The tape is refused.</exception>
    public static PrepareRequest Request(byte[] bytes, TicketNote note)
    {
        var read = TapeReader.Read(bytes, new TapeReading { TrimJumps = note.TrimJumps });
        if (read.Value is not { } tape)
            throw new InvalidOperationException(read.Violations[0].Message);
        var catalog = Embedded.StarterCatalog;
        var machine = MachineOf(note);
        var style = note.Sku is null ? catalog.CapStyles.Single(known => known.Id == note.Style).Value : null;
        var resolved = TicketResolver.Resolve(
            TicketOf(note), new ShopDefaults(machine.Id, "gauge-1", HouseBook.BookId, 40), style?.Id, note.CapFrame, "corpus.dst");
        return new()
        {
            Tape = tape,
            Ticket = resolved,
            Setup = new()
            {
                Style = style,
                Frame = catalog.CapFrames.Single(known => known.Id == note.CapFrame).Value,
                Machine = machine,
                Station = catalog.FramingStations[0].Value,
                Rules = EffectiveRules.For(Embedded.HouseBook, null, null, resolved.CapStyle, resolved.Location),
            },
            Label = "10427",
        };
    }

    private static Machine MachineOf(TicketNote note)
    {
        var machine = Embedded.StarterCatalog.Machines.Single(known => known.Id == note.Machine).Value;
        return machine with { AddsTies = note.MachineTies, Tape = machine.Tape with { TrimCount = note.TrimJumps } };
    }

    private static Ticket TicketOf(TicketNote note) => new()
    {
        OrderNumber = "FC-1",
        CapStyle = note.Sku is null ? note.Style : null,
        CapSku = note.Sku,
        Quantity = note.Quantity,
        Location = Enum.Parse<CapLocation>(note.Location, ignoreCase: true),
        Machine = note.Machine,
        CapFrame = note.CapFrame,
        Technique = note.Technique is { } technique ? Enum.Parse<Technique>(technique, ignoreCase: true) : null,
        TapeIs = Enum.Parse<TapeOrientation>(note.TapeIs, ignoreCase: true),
        Seating = SeatingOf(note),
        ExpectedSize = note.ExpectedWidthMm is null && note.ExpectedHeightMm is null ? null : new(note.ExpectedWidthMm, note.ExpectedHeightMm),
        CapColor = note.CapColor is { } color ? new(null, color) : null,
        Threads = note.NamesThreads && note.Threads.Count > 0 ? [.. note.Threads.Select(ThreadOf)] : null,
    };

    private static TicketSeating SeatingOf(TicketNote note) => new()
    {
        CenterBy = Enum.Parse<SeatingCenter>(note.CenterBy, ignoreCase: true),
        CenterXMm = note.CenterBy == "x" ? note.CenterXMm : null,
        BaseAboveBrimMm = note.BaseAboveBrimMm,
        OffsetRightMm = note.OffsetRightMm,
    };

    private static TicketThread ThreadOf(ThreadNote note) => new()
    {
        Block = note.Block,
        Name = note.Name,
        Color = note.Color,
        WeightWt = note.WeightWt,
        Kind = note.Kind is { } kind ? Enum.Parse<ThreadKind>(kind, ignoreCase: true) : null,
        Foam = note.Foam ? true : null,
        Action = note.Action is { } action ? Enum.Parse<StopAction>(action, ignoreCase: true) : null,
    };
}
