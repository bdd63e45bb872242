using CapPrep.Service.Events;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Jobs;

internal enum Erased
{
    Yes,
    NoSuchJob,
    Working,
}

/// <summary>
/// Takes a job out of the tables with everything that hangs on it. Its events stay, without the caller's own data;
/// its neighbors in the line of revisions become each other's neighbors. Locks are taken in the order that every
/// writer keeps: the documents, rows of jobs, the position counter.
/// </summary>
internal sealed class JobEraser(AppDb db, DocumentStore documents, EventLog events, TimeProvider clock)
{
    public async Task<Erased> Erase(string id, CancellationToken cancel)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.OwnDocuments(cancel);
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel);
        if (job is null)
            return Erased.NoSuchJob;
        if (await db.Jobs.Where(row => row.Id == id && row.Status != JobStatus.Working).ExecuteDeleteAsync(cancel) == 0)
            return Erased.Working;

        await db.Idempotency.Where(row => row.Job == id).ExecuteDeleteAsync(cancel);
        await events.ForgetEcho(id, cancel);
        await documents.Erase(id, cancel);
        await ForgetSamples(id, cancel);
        await Join(job, cancel);
        await transaction.CommitAsync(cancel);
        return Erased.Yes;
    }

    /// <summary>
    /// What was accepted stays in force, since it holds nothing of the tape. A sample that is sewn from its own tape goes
    /// with that tape.
    /// </summary>
    private async Task ForgetSamples(string id, CancellationToken cancel)
    {
        var samples = db.Decisions.Where(row => row.Job == id && row.Decision == DecisionWord.ApproveSample && row.Seen != null);
        foreach (var said in await samples.Select(row => row.Said).ToArrayAsync(cancel))
            await documents.Erase(said, cancel);
        await DecisionShelf.End(samples.Where(row => row.Ended == null), clock.GetUtcNow(), cancel);
    }

    private async Task Join(JobRow gone, CancellationToken cancel)
    {
        if (gone.Replaces is { } before)
        {
            await db.Jobs.Where(row => row.Id == before)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.ReplacedBy, gone.ReplacedBy), cancel);
            await Moved(gone.Shop, before, cancel);
        }

        if (gone.ReplacedBy is { } after)
        {
            await db.Jobs.Where(row => row.Id == after)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.Replaces, gone.Replaces), cancel);
            await Moved(gone.Shop, after, cancel);
        }
    }

    private async Task Moved(string shop, string id, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        var position = await db.Next(shop, Counters.Position, cancel);
        await db.Jobs.Where(row => row.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Position, position).SetProperty(row => row.Changed, now), cancel);
    }
}
