using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Hangfire;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>
/// Makes good what a death left behind: leases nobody renews, and waiting jobs that no Hangfire job stands for. With
/// SQLite there is one process, so at its start every lease is void and nothing was handed over.
/// </summary>
internal sealed class SweepLoop(
    IServiceScopeFactory scopes, IHandover handover, Worker worker, JobStorage storage, Settings settings) : ILoop
{
    private static readonly TimeSpan HandedAgainAfter = TimeSpan.FromSeconds(60);

    private DateTimeOffset? _started;

    public string Name => "sweep";

    public TimeSpan Every => TimeSpan.FromSeconds(5);

    public async Task RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var first = _started is null;
        _started ??= now;
        await PutBack(db, first && settings.Database.Provider == DatabaseProvider.Sqlite ? null : now, cancel);
        foreach (var id in await Waiting(db, now, cancel))
            handover.Prepare(id);
    }

    /// <summary>
    /// Jobs of a process that died go back. If it had more than one, nobody knows which of them killed it: they are
    /// suspect from now on and the attempt does not count; only a death while alone does.
    /// </summary>
    /// <param name="expiredBefore">Null: whatever the lease says.</param>
    private async Task PutBack(AppDb db, DateTimeOffset? expiredBefore, CancellationToken cancel)
    {
        var orphans = await db.Jobs.IgnoreQueryFilters().AsNoTracking()
            .Where(job => job.Status == JobStatus.Working && job.LeaseHolder != worker.Me
                && (expiredBefore == null || job.LeaseUntil < expiredBefore))
            .Select(job => new { job.Id, job.LeaseHolder, job.Fence })
            .ToArrayAsync(cancel);
        foreach (var death in orphans.GroupBy(job => job.LeaseHolder))
        {
            var suspect = death.Count() > 1;
            foreach (var job in death)
                await PutBack(db, job.Id, job.Fence, suspect, cancel);
        }
    }

    private static Task<int> PutBack(AppDb db, string id, long fence, bool suspect, CancellationToken cancel) => db.Jobs
        .IgnoreQueryFilters()
        .Where(job => job.Id == id && job.Fence == fence && job.Status == JobStatus.Working)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(job => job.Status, JobStatus.Queued)
                .SetProperty(job => job.Suspect, job => job.Suspect || suspect)
                .SetProperty(job => job.Attempts, job => suspect ? job.Attempts - 1 : job.Attempts)
                .SetProperty(job => job.HandedAt, (DateTimeOffset?)null)
                .SetProperty(job => job.LeaseHolder, (string?)null)
                .SetProperty(job => job.LeaseUntil, (DateTimeOffset?)null),
            cancel);

    /// <summary>What was handed over before this start, or long ago, may be lost.</summary>
    private async Task<string[]> Waiting(AppDb db, DateTimeOffset now, CancellationToken cancel)
    {
        var handedBefore = now - HandedAgainAfter > _started ? now - HandedAgainAfter : _started!.Value;
        var ahead = storage.GetMonitoringApi().EnqueuedCount(Queues.Prepare);
        var room = (int)Math.Max(0, (4L * settings.Workers.Count) - ahead);
        if (room == 0)
            return [];
        var ids = await db.Jobs.IgnoreQueryFilters().AsNoTracking()
            .Where(job => job.Status == JobStatus.Queued && (job.HandedAt == null || job.HandedAt < handedBefore))
            .OrderBy(job => job.QueuedAt).ThenBy(job => job.Id)
            .Select(job => job.Id)
            .Take(room)
            .ToArrayAsync(cancel);
        await db.Jobs.IgnoreQueryFilters().Where(job => ids.Contains(job.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.HandedAt, now), cancel);
        return ids;
    }
}
