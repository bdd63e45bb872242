using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Commands;

namespace CapPrep.TestKit.Preparations;

/// <summary>Prepares tapes with what a new shop begins with, without a service.</summary>
public static class StarterShop
{
    private const string Label = "10427";

    /// <summary>A plain order for mid-crown caps.</summary>
    public static Ticket Ticket(IReadOnlyList<TicketThread> threads) => new()
    {
        OrderNumber = "QH-7",
        CapStyle = "six-panel-structured-mid",
        Quantity = 48,
        Threads = threads.Count == 0 ? null : threads,
    };

    /// <summary>What the engine is asked.</summary>
    /// <exception cref="InvalidOperationException">The tape or the ticket is refused.</exception>
    public static PrepareRequest Request(byte[] tape, Ticket ticket)
    {
        var faults = new List<Violation>();
        var read = TapeReader.Read(tape, new TapeReading());
        faults.AddRange(read.Violations);
        var (resolved, setup) = CheckCatalog.Starter().Resolve(ticket, "design.dst", faults);
        if (faults.Count > 0)
            throw new InvalidOperationException(faults[0].Message);
        return new PrepareRequest { Tape = read.Value!, Ticket = resolved!, Setup = setup!, Label = Label };
    }

    public static Preparation Prepare(byte[] tape, Ticket ticket) => CapPrepper.Prepare(Request(tape, ticket));
}
