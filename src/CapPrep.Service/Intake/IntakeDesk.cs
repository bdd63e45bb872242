using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Calls;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Intake;

/// <summary>The one way in, for requests, hot folders and rechecks: accepted means stored.</summary>
internal sealed class IntakeDesk(
    AppDb db, Inspection inspection, Idempotency idempotency, JobEntry entry, IHandover handover, Settings settings, ShopScope scope)
{
    private const int MostTries = 10;
    private const int OverloadedRetrySeconds = 5;

    public async Task<Acceptance> Accept(Submission submission, CancellationToken cancel)
    {
        var ticket = TicketReader.Read(submission.Ticket);
        var tapeSha = DocumentStore.Sha(submission.Tape);
        var request = Request(submission, ticket, tapeSha);
        if (await Earlier(request, cancel) is { } earlier)
            return earlier;

        var (goods, refusal) = await inspection.Look(submission, ticket, tapeSha, cancel);
        if (goods is null)
            return Acceptance.Refused(refusal!);
        if (await IsFull(cancel))
            return Acceptance.Refused(Overloaded());

        var acceptance = await Store(submission, goods, request, cancel);
        if (acceptance is { JobId: { } id, Replayed: false })
            handover.Prepare(id);
        return acceptance;
    }

    private KeyedRequest? Request(Submission submission, ReadResult<Ticket> ticket, string tapeSha) =>
        submission.IdempotencyKey is { } key && ticket.Succeeded
            ? new KeyedRequest(key, JobPrint.Of(scope.Required, tapeSha, ticket.Value), submission.Route)
            : null;

    private async Task<Acceptance?> Earlier(KeyedRequest? request, CancellationToken cancel)
    {
        if (request is null || await idempotency.Earlier(scope.Required, request.Key, cancel) is not { } earlier)
            return null;
        return earlier.Print == request.Print
            ? new Acceptance(earlier.Job, Replayed: true, null)
            : Acceptance.Refused(new Refusal(Problems.IdempotencyKeyReused, $"This {Idempotency.Header} came before with another tape or ticket."));
    }

    private async Task<bool> IsFull(CancellationToken cancel)
    {
        var waiting = await db.Jobs.IgnoreQueryFilters()
            .CountAsync(job => job.Status == JobStatus.Queued || job.Status == JobStatus.Working, cancel);
        return waiting >= settings.QueueMaxWaiting;
    }

    private Refusal Overloaded() => new(
        Problems.Overloaded, string.Create(CultureInfo.InvariantCulture, $"{settings.QueueMaxWaiting} jobs are waiting."))
    {
        RetryAfterSeconds = OverloadedRetrySeconds,
    };

    /// <summary>Whoever loses a race against another process looks again: for the key, and for the revision before.</summary>
    private async Task<Acceptance> Store(Submission submission, Goods goods, KeyedRequest? request, CancellationToken cancel)
    {
        for (var tries = 1; ; tries++)
        {
            db.ChangeTracker.Clear();
            try
            {
                if (await TryStore(submission, goods, request, cancel) is { } acceptance)
                    return acceptance;
            }
            catch (Exception fault) when (Race.IsLost(fault) && tries < MostTries)
            {
                // The winner's rows are there to be seen at the next try.
            }
        }
    }

    private async Task<Acceptance?> TryStore(Submission submission, Goods goods, KeyedRequest? request, CancellationToken cancel)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await entry.OwnLine(goods.Ticket, cancel);
        if (await Earlier(request, cancel) is { } earlier)
            return earlier;
        if (request is not null)
            await idempotency.Note(request.Row(scope.Required, submission.JobId), cancel);
        if (!await entry.Add(submission, goods, cancel))
            return null;
        Checkpoints.Pass(Checkpoints.AcceptedBeforeCommit);
        await transaction.CommitAsync(cancel);
        Checkpoints.Pass(Checkpoints.Accepted);
        return new Acceptance(submission.JobId, Replayed: false, null);
    }

    private sealed record KeyedRequest(string Key, string Print, string Route)
    {
        public IdempotencyRow Row(string shop, string job) => new() { Shop = shop, Key = Key, Print = Print, Job = job, Route = Route };
    }
}
