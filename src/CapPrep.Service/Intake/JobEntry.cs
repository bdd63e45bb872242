using System.Diagnostics;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Intake;

/// <summary>
/// Writes a job into the tables, in the caller's transaction. Rows are locked in the order documents, revision before,
/// counters: the order in which jobs end, too.
/// </summary>
internal sealed class JobEntry(
    AppDb db, DocumentStore documents, DecisionPins decisions, Settings settings, ShopScope scope, TimeProvider clock)
{
    /// <summary>Nobody else adds a revision to this order line until the transaction ends.</summary>
    public Task OwnLine(Ticket ticket, CancellationToken cancel) =>
        db.OwnLine(scope.Required, ticket.OrderNumber, LineOf(ticket), LocationOf(ticket), cancel);

    /// <summary>False: the revision before was replaced or erased meanwhile; begin again.</summary>
    public async Task<bool> Add(Submission submission, Goods goods, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        await documents.Add(
            scope.Required, submission.JobId, DocumentKinds.TapeReceived, "application/octet-stream", submission.Tape,
            now.AddDays(settings.Retention.TapeDays), cancel);
        var before = await Before(goods.Ticket, cancel);
        if (before is not null && !await Replace(before, submission.JobId, now, cancel))
            return false;

        var job = Row(submission, goods, before, now);
        await decisions.Pin(job, Inputs(goods), now.AddDays(settings.Retention.TapeDays), cancel);
        job.Position = await db.Next(scope.Required, Counters.Position, cancel);
        job.Number = await db.Next(scope.Required, Counters.Number, cancel);
        db.Jobs.Add(job);
        await db.SaveChangesAsync(cancel);
        return true;
    }

    private Task<Revision?> Before(Ticket ticket, CancellationToken cancel)
    {
        var (line, location) = (LineOf(ticket), LocationOf(ticket));
        return db.Jobs.AsNoTracking()
            .Where(job => job.Shop == scope.Required && job.OrderNumber == ticket.OrderNumber && job.Line == line && job.Location == location)
            .OrderByDescending(job => job.Revision)
            .Select(job => new Revision(job.Id, job.Revision))
            .FirstOrDefaultAsync(cancel);
    }

    private async Task<bool> Replace(Revision before, string by, DateTimeOffset now, CancellationToken cancel)
    {
        var row = db.Jobs.Where(job => job.Id == before.Id);
        var replaced = await row.Where(job => job.ReplacedBy == null)
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.ReplacedBy, by).SetProperty(job => job.Changed, now), cancel);
        if (replaced == 0)
            return false;
        var position = await db.Next(scope.Required, Counters.Position, cancel);
        await row.ExecuteUpdateAsync(set => set.SetProperty(job => job.Position, position), cancel);
        return true;
    }

    private JobRow Row(Submission submission, Goods goods, Revision? before, DateTimeOffset now)
    {
        var ticket = goods.Ticket;
        var resolved = TicketResolver.Resolve(ticket, goods.Pins.Shop, goods.Pins.Style?.Id, goods.Pins.DefaultFrame, submission.FileName);
        return new JobRow
        {
            Shop = scope.Required,
            Id = submission.JobId,
            Number = 0,
            Status = JobStatus.Queued,
            OrderNumber = ticket.OrderNumber,
            Line = resolved.Line,
            Location = LocationOf(ticket),
            OrderLines = ticket.OrderLines,
            Customer = ticket.Customer,
            CapStyle = resolved.CapStyle,
            Design = resolved.Design,
            Quantity = ticket.Quantity,
            Revision = (before?.Number ?? 0) + 1,
            Replaces = before?.Id,
            RecheckOf = submission.RecheckOf,
            Door = submission.Door,
            DropId = submission.DropId,
            FileName = submission.FileName,
            TapeSha = goods.TapeSha,
            StitchesSha = StitchesHash.Of(goods.Tape),
            Technique = Words<Technique>.Standard.Of(resolved.Technique),
            Digitizer = ticket.Digitizer,
            TicketReceived = TicketWriter.Canonical(ticket),
            TicketResolved = Json.Bytes(writer => ResolvedTicketWriter.Write(writer, resolved)),
            Inputs = [],
            Echo = ticket.Echo?.ToArray(),
            Received = now,
            QueuedAt = now,
            HandedAt = now,
            Changed = now,
            Position = 0,
            Traceparent = Activity.Current is { IdFormat: ActivityIdFormat.W3C } activity ? activity.Id : null,
        };
    }

    private JobInputs Inputs(Goods goods) => new()
    {
        TapeSha256 = goods.TapeSha,
        EngineVersion = EngineVersion.Current,
        CapStyle = goods.Pins.Style,
        CapFrame = goods.Pins.Frame,
        Machine = goods.Pins.Machine,
        FramingStation = goods.Pins.Station,
        RuleBook = goods.Pins.Book,
        BasedOn = goods.Pins.BasedOn,
        StyleSuggestions = goods.Pins.Suggestions,
        OtherStyles = goods.Pins.OtherStyles,
        QrPrefix = settings.CardsQrPrefix,
    };

    private static string LineOf(Ticket ticket) => ticket.Line ?? "1";

    private static string LocationOf(Ticket ticket) => Words<CapLocation>.Standard.Of(ticket.Location ?? CapLocation.Front);

    private sealed record Revision(string Id, int Number);
}
