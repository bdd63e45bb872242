using System.Text;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Commands;

namespace CapPrep.TestKit.Tapes;

/// <summary>Prepares a tape on the starter catalog, without a service.</summary>
public static class Prepared
{
    /// <param name="tape">The whole file.</param>
    /// <param name="threads">Thread names by block; none: the ticket names no threads.</param>
    public static Preparation Of(byte[] tape, params string[] threads)
    {
        var faults = new List<Violation>();
        var read = TapeReader.Read(tape, new TapeReading());
        var ticket = TicketReader.Read(Encoding.UTF8.GetBytes(TicketOf(threads)));
        var (resolved, setup) = CheckCatalog.Starter().Resolve(ticket.Value!, "sample.dst", faults);
        return CapPrepper.Prepare(new PrepareRequest { Tape = read.Value!, Ticket = resolved!, Setup = setup!, Label = "SAMPLE" });
    }

    private static string TicketOf(string[] threads)
    {
        var named = string.Join(',', threads.Select((name, at) => $$"""{"block":{{at + 1}},"name":"{{name}}"}"""));
        var list = threads.Length == 0 ? "" : $",\"threads\":[{named}]";
        return $$"""{"orderNumber":"QH-1","capStyle":"six-panel-structured-mid","quantity":48{{list}}}""";
    }
}
