using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>
/// Takes away what is past its time, in small transactions, so that nothing else waits long: documents, whole jobs,
/// events with their deliveries, attempts, remembered requests. Then the file of the embedded store shrinks.
/// </summary>
internal sealed class RetentionLoop(IServiceScopeFactory scopes, Settings settings) : ILoop
{
    private const int Portion = 200;

    public string Name => "retention";

    public TimeSpan Every => TimeSpan.FromHours(1);

    public async Task RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        await Each(OldDocuments(now), (services, row) => Expire(services, row, now, cancel), cancel);
        await Each(OldJobs(now.AddDays(-settings.Retention.JobDays)), (services, row) => services.GetRequiredService<JobEraser>().Erase(row.Id, cancel), cancel);
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        await db.Idempotency.Where(row => row.Expires <= now).ExecuteDeleteAsync(cancel);
        foreach (var shop in await db.Shops.Select(row => row.Shop).OrderBy(shop => shop).ToArrayAsync(cancel))
            await OldEvents(db, shop, now.AddDays(-settings.Retention.EventDays), cancel);
        var oldAttempts = now.AddDays(-settings.Retention.AttemptDays);
        var oldDrops = now.AddDays(-settings.Retention.JobDays);
        await db.Drops.Where(row => row.Ended < oldDrops).ExecuteDeleteAsync(cancel);
        await db.Attempts.Where(row => row.At < oldAttempts).ExecuteDeleteAsync(cancel);
        await Shrink(db, cancel);
    }

    private static Func<AppDb, IQueryable<Target>> OldDocuments(DateTimeOffset now) => db => db.JobDocuments
        .Where(link => link.Expires != null && link.Expires <= now)
        .Select(link => new { link.Shop, link.Job })
        .Distinct()
        .OrderBy(link => link.Job)
        .Select(link => new Target(link.Shop, link.Job));

    private static Func<AppDb, IQueryable<Target>> OldJobs(DateTimeOffset before) => db => db.Jobs
        .Where(job => job.Received < before && (job.Status == JobStatus.Finished || job.Status == JobStatus.Failed))
        .OrderBy(job => job.Id)
        .Select(job => new Target(job.Shop, job.Id));

    /// <summary>Works through the targets, each in a scope of its own; ends when a portion was not full.</summary>
    private async Task Each(
        Func<AppDb, IQueryable<Target>> find, Func<IServiceProvider, Target, Task> work, CancellationToken cancel)
    {
        Target[] targets;
        do
        {
            await using (var scope = scopes.CreateAsyncScope())
                targets = await find(scope.ServiceProvider.GetRequiredService<AppDb>()).Take(Portion).ToArrayAsync(cancel);
            foreach (var target in targets)
            {
                await using var scope = scopes.CreateAsyncScope();
                scope.ServiceProvider.GetRequiredService<ShopScope>().Shop = target.Shop;
                await work(scope.ServiceProvider, target);
            }
        }
        while (targets.Length == Portion);
    }

    // A list sorted by change shows that documents went.
    private static async Task Expire(IServiceProvider services, Target target, DateTimeOffset now, CancellationToken cancel)
    {
        var db = services.GetRequiredService<AppDb>();
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (await services.GetRequiredService<DocumentStore>().EraseExpired(target.Id, now, cancel) == 0)
            return;
        var position = await db.Next(target.Shop, Counters.Position, cancel);
        await db.Jobs.Where(job => job.Id == target.Id)
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.Position, position).SetProperty(job => job.Changed, now), cancel);
        await transaction.CommitAsync(cancel);
    }

    /// <summary>
    /// Oldest first, and never past one that is still owed, so that what is left has no holes. The newest event of
    /// each type stays, so that the next one can name it.
    /// </summary>
    private static async Task OldEvents(AppDb db, string shop, DateTimeOffset before, CancellationToken cancel)
    {
        var firstOwed = await db.Deliveries
            .Where(delivery => delivery.Shop == shop && delivery.State == DeliveryState.Owed)
            .Join(db.Events, delivery => delivery.Event, row => row.Id, (_, row) => (long?)row.Position)
            .MinAsync(cancel) ?? long.MaxValue;
        var old = db.Events.Where(row => row.Shop == shop && row.At < before && row.Position < firstOwed
            && (row.Sequence == null || db.Events.Any(next => next.Shop == row.Shop && next.Type == row.Type && next.Sequence > row.Sequence)));
        await db.Attempts
            .Where(attempt => db.Deliveries.Any(delivery => delivery.Id == attempt.Delivery && old.Any(row => row.Id == delivery.Event)))
            .ExecuteDeleteAsync(cancel);
        await db.Deliveries.Where(delivery => old.Any(row => row.Id == delivery.Event)).ExecuteDeleteAsync(cancel);
        await old.ExecuteDeleteAsync(cancel);
    }

    private static async Task Shrink(AppDb db, CancellationToken cancel)
    {
        if (db.Database.IsNpgsql())
            return;
        for (var step = 0; step < 100 && await FreePages(db, cancel) > 0; step++)
            await db.Database.ExecuteSqlRawAsync("PRAGMA incremental_vacuum(500)", cancel);
    }

    private static async Task<long> FreePages(AppDb db, CancellationToken cancel) =>
        (await db.Database.SqlQueryRaw<long>("SELECT freelist_count AS \"Value\" FROM pragma_freelist_count").ToListAsync(cancel))[0];

    private sealed record Target(string Shop, string Id);
}
