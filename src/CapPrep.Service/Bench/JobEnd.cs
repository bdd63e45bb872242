using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>Why a job ended without a result.</summary>
/// <param name="Code"><c>engine-fault</c>, <c>loss-check-failed</c>, <c>drawing-fault</c>, <c>too-many-attempts</c> or <c>time-limit</c>.</param>
internal sealed record JobFailure(string Code, string ErrorId, string Message);

/// <summary>
/// Ends a job in one transaction: documents, row, events and what is owed, or nothing of it. A worker whose fence is
/// no longer the row's has lost the job to another; its work is thrown away. Locks are taken in the order that every
/// writer keeps: the documents, rows of jobs, the position counter.
/// </summary>
internal sealed class JobEnd(
    AppDb db, DocumentStore documents, JobEvents events, Waiters waiters, IHandover handover, Settings settings, TimeProvider clock)
{
    private const int MostTries = 5;

    /// <summary>False when the job was another worker's by now.</summary>
    public Task<bool> Finish(Claim claim, Verdict verdict, Papers papers, CancellationToken cancel) =>
        End(claim, papers.Documents, async now =>
            await Row(claim).ExecuteUpdateAsync(
                set => set
                    .SetProperty(job => job.Status, JobStatus.Finished)
                    .SetProperty(job => job.Verdict, Words<Verdict>.Standard.Of(verdict))
                    .SetProperty(job => job.Outcome, papers.Outcome)
                    .SetProperty(job => job.Finished, now)
                    .SetProperty(job => job.Changed, now)
                    .SetProperty(job => job.LeaseHolder, (string?)null)
                    .SetProperty(job => job.LeaseUntil, (DateTimeOffset?)null),
                cancel),
            cancel);

    /// <summary>False when the job was another worker's by now.</summary>
    public Task<bool> Fail(Claim claim, JobFailure failure, int attempts, CancellationToken cancel)
    {
        var body = Json.Bytes(writer => Write(writer, failure, attempts));
        return End(claim, [], async now =>
            await Row(claim).ExecuteUpdateAsync(
                set => set
                    .SetProperty(job => job.Status, JobStatus.Failed)
                    .SetProperty(job => job.Failure, body)
                    .SetProperty(job => job.Changed, now)
                    .SetProperty(job => job.LeaseHolder, (string?)null)
                    .SetProperty(job => job.LeaseUntil, (DateTimeOffset?)null),
                cancel),
            cancel);
    }

    private async Task<bool> End(
        Claim claim, IReadOnlyList<JobPaper> papers, Func<DateTimeOffset, Task<int>> update, CancellationToken cancel)
    {
        for (var tries = 1; ; tries++)
        {
            db.ChangeTracker.Clear();
            try
            {
                return await TryEnd(claim, papers, update, cancel);
            }
            catch (Exception fault) when (Race.IsLost(fault) && tries < MostTries)
            {
                // Two transactions waited for one another and this one gave way; nothing of it is stored.
            }
        }
    }

    private async Task<bool> TryEnd(
        Claim claim, IReadOnlyList<JobPaper> papers, Func<DateTimeOffset, Task<int>> update, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.ShareDocuments(cancel);
        foreach (var paper in papers)
            await documents.Add(claim.Shop, claim.Id, paper.Kind, paper.ContentType, paper.Bytes, Expires(paper.Kind, now), cancel);
        if (await update(now) == 0)
            return false;
        var position = await db.Next(claim.Shop, Counters.Position, cancel);
        await Row(claim.Id).ExecuteUpdateAsync(set => set.SetProperty(job => job.Position, position), cancel);
        await db.SaveChangesAsync(cancel);
        var due = await events.Ended(await Row(claim.Id).AsNoTracking().SingleAsync(cancel), cancel);
        Checkpoints.Pass(Checkpoints.ResultBeforeCommit);
        await transaction.CommitAsync(cancel);
        Checkpoints.Pass(Checkpoints.ResultCommitted);
        Tell(claim, due);
        return true;
    }

    private void Tell(Claim claim, IReadOnlyList<string> due)
    {
        waiters.Release(claim.Id);
        waiters.Release(claim.Shop);
        foreach (var delivery in due)
            handover.Deliver(delivery);
    }

    private IQueryable<JobRow> Row(Claim claim) => Row(claim.Id)
        .Where(job => job.Fence == claim.Fence && job.Status == JobStatus.Working);

    private IQueryable<JobRow> Row(string id) => db.Jobs.Where(job => job.Id == id);

    private DateTimeOffset? Expires(string kind, DateTimeOffset now) => kind switch
    {
        DocumentKinds.TapeSew or DocumentKinds.TapeProposed => now.AddDays(settings.Retention.TapeDays),
        DocumentKinds.Result => null,
        _ => now.AddDays(settings.Retention.PictureDays),
    };

    private static void Write(Utf8JsonWriter writer, JobFailure failure, int attempts)
    {
        writer.WriteStartObject();
        writer.WriteString("code", failure.Code);
        writer.WriteString("errorId", failure.ErrorId);
        writer.WriteString("message", failure.Message);
        writer.WriteNumber("attempts", attempts);
        writer.WriteEndObject();
    }
}
