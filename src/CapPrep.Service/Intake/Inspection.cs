using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Intake;

/// <summary>A ticket and a tape that can be worked with.</summary>
/// <param name="TapeSha">SHA-256 of the file.</param>
internal sealed record Goods(Ticket Ticket, Tape Tape, string TapeSha, Pins Pins);

/// <summary>Reads what came in and finds every fault in ticket and tape, all of them in one refusal.</summary>
internal sealed class Inspection(PinDesk desk, Settings settings)
{
    public async Task<(Goods? Goods, Refusal? Refusal)> Look(
        Submission submission, ReadResult<Ticket> ticket, string tapeSha, CancellationToken cancel)
    {
        var faults = new Faults(TicketReader.Part, "A ticket");
        var ids = ticket.Succeeded ? TicketIds.Of(ticket.Value) : TicketIds.Of(submission.Ticket);
        var pins = ids is null ? null : await desk.Pin(ids, faults, cancel);
        if (ticket.Value?.TapeSha256 is { } wanted && wanted != tapeSha)
            faults.Add("/tapeSha256", ViolationCodes.ShaMismatch, $"The tape that came has the SHA-256 {tapeSha}.");
        var tape = TapeReader.Read(submission.Tape, new TapeReading { MaxRecords = settings.Uploads.MaxRecords });

        Violation[] ofTicket = [.. faults.Violations, .. ticket.Violations];
        return ofTicket.Length + tape.Violations.Count > 0
            ? (null, Refused(ofTicket, tape.Violations))
            : (new Goods(ticket.Value!, tape.Value!, tapeSha, pins!), null);
    }

    private static Refusal Refused(IReadOnlyList<Violation> ofTicket, IReadOnlyList<Violation> ofTape)
    {
        var problem = ofTicket.Count > 0 ? Problems.TicketInvalid : Problems.TapeInvalid;
        string[] sentences =
        [
            .. ofTicket.Count > 0 ? [Refusal.Counted(ofTicket, "ticket")] : Array.Empty<string>(),
            .. ofTape.Select(violation => violation.Message),
        ];
        return new Refusal(problem, string.Join(' ', sentences)) { Violations = [.. ofTicket, .. ofTape] };
    }
}
