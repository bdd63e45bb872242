using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Decisions;

/// <summary>What became of a decision.</summary>
/// <param name="Points">Of the decision, new or from before; empty: nothing was stored.</param>
internal sealed record Decided(IReadOnlyList<DecisionRow> Points)
{
    /// <summary>The same request made it before.</summary>
    public bool Replayed { get; init; }

    /// <summary>The key belongs to another request.</summary>
    public bool KeyIsTaken { get; init; }
}

/// <summary>
/// Stores a decision in one transaction: what it ends, its points, the audit, the event and what is owed. Locks are
/// taken in the order that every writer keeps: the name that decides who goes first, the documents, rows of jobs, the
/// position counter.
/// </summary>
internal sealed class DecisionEntry(
    AppDb db,
    DocumentStore documents,
    DecisionShelf shelf,
    Idempotency idempotency,
    EventLog events,
    AuditTrail audit,
    DecisionEvent told,
    Waiters waiters,
    IHandover handover,
    TimeProvider clock)
{
    private const int MostTries = 10;
    private const string AuditKind = "decisions";

    /// <param name="request">Null: the request has no key.</param>
    public async Task<Decided> Store(DecidedJob job, DecisionBody body, IdempotencyRow? request, string keyId, CancellationToken cancel)
    {
        for (var tries = 1; ; tries++)
        {
            db.ChangeTracker.Clear();
            try
            {
                return await TryStore(job, body, request, keyId, cancel);
            }
            catch (Exception fault) when (Race.IsLost(fault) && tries < MostTries)
            {
                // Somebody else was first; what they stored is there to be seen at the next try.
            }
        }
    }

    /// <summary>What an earlier request with the same key made; null: there was none.</summary>
    public async Task<Decided?> Earlier(IdempotencyRow? request, CancellationToken cancel)
    {
        if (request is null || await idempotency.Earlier(request.Shop, request.Key, cancel) is not { } earlier)
            return null;
        return earlier.Print == request.Print
            ? new([.. (await shelf.Of(earlier.Job, cancel)).Where(row => row.Said == earlier.Made)]) { Replayed = true }
            : new([]) { KeyIsTaken = true };
    }

    private async Task<Decided> TryStore(DecidedJob job, DecisionBody body, IdempotencyRow? request, string keyId, CancellationToken cancel)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.OwnDecisions(job.Binding, cancel);
        if (await Earlier(request, cancel) is { } earlier)
            return earlier;
        var now = clock.GetUtcNow();
        var points = new DecisionPoints(job, body, Ids.New(Ids.Decision, clock), now).Rows();
        await KeepSample(job, body, points[0].Said, cancel);
        if (!await IsStillThere(job.Row, cancel))
            return new([]);
        points[0].Ends = await EndEarlier(job.Binding, points, now, cancel);
        if (request is not null)
        {
            request.Made = points[0].Said;
            await idempotency.Note(request, cancel);
        }

        db.Decisions.AddRange(points);
        audit.Note(job.Row.Shop, keyId, "add", AuditKind, points[0].Said, afterSha: DocumentStore.Sha(Json.Bytes(writer => DecisionJson.Write(writer, points))));
        var position = await db.Next(job.Row.Shop, Counters.Position, cancel);
        var due = await events.Append(new NewEvent(job.Row.Shop, EventTypes.JobDecided, position, now, told.Data(job.Row, points)) { Job = job.Row.Id }, cancel);
        await transaction.CommitAsync(cancel);
        waiters.Release(job.Row.Shop);
        foreach (var delivery in due)
            handover.Deliver(delivery);
        return new(points);
    }

    /// <summary>The row stays locked until the transaction ends, so that nobody erases the job meanwhile.</summary>
    private async Task<bool> IsStillThere(JobRow job, CancellationToken cancel) => await db.Jobs
        .Where(row => row.Id == job.Id && row.Status == JobStatus.Finished)
        .ExecuteUpdateAsync(set => set.SetProperty(row => row.Fence, row => row.Fence), cancel) == 1;

    /// <summary>A sample sewn in another order is sewn again from this very tape, so it is kept with the decision.</summary>
    private async Task KeepSample(DecidedJob job, DecisionBody body, string decision, CancellationToken cancel)
    {
        if (body.Decision == DecisionWord.ApproveSample && job is { IsResequenced: true, SewnTape: { } tape })
            await documents.Add(job.Row.Shop, decision, DocumentKinds.TapeApproved, "application/octet-stream", tape, null, cancel);
    }

    /// <summary>The latest word counts.</summary>
    private async Task<int> EndEarlier(Binding binding, IReadOnlyList<DecisionRow> points, DateTimeOffset now, CancellationToken cancel)
    {
        var ended = 0;
        if (points[0].Decision == DecisionWord.ApproveSample)
            ended += await DecisionShelf.End(shelf.ApprovedAsReceived(binding), now, cancel);
        if (points[0] is { Rule: null, Decision: DecisionWord.Reject })
        {
            ended += await DecisionShelf.End(shelf.Approved(binding), now, cancel);
            ended += await DecisionShelf.End(shelf.Accepted(binding), now, cancel);
        }

        foreach (var rule in points.Where(point => point.Rule is not null).GroupBy(point => point.Rule!))
        {
            int?[] elements = [.. rule.Select(point => point.Element)];
            var all = elements.Contains(null);
            ended += await DecisionShelf.End(
                shelf.Accepted(binding).Where(row => row.Rule == rule.Key && (all || elements.Contains(row.Element))), now, cancel);
        }

        return ended;
    }
}
