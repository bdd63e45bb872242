using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>Takes away what is past its time, a little at a time.</summary>
internal sealed class RetentionLoop(IServiceScopeFactory scopes, Settings settings) : ILoop
{
    private const int JobsARound = 500;
    private const int PagesAStep = 1000;

    public string Name => "retention";

    public TimeSpan Every => TimeSpan.FromHours(1);

    public async Task RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        await Rows(db, now, cancel);
        await Documents(db, scope.ServiceProvider.GetRequiredService<DocumentStore>(), now, cancel);
        if (db.Database.IsSqlite())
            await db.Database.ExecuteSqlRawAsync($"PRAGMA incremental_vacuum({PagesAStep})", cancel);
    }

    private async Task Rows(AppDb db, DateTimeOffset now, CancellationToken cancel)
    {
        var events = now.AddDays(-settings.Retention.EventDays);
        var attempts = now.AddDays(-settings.Retention.AttemptDays);
        await db.Idempotency.Where(row => row.Expires <= now).ExecuteDeleteAsync(cancel);
        await db.Attempts.Where(row => row.At < attempts).ExecuteDeleteAsync(cancel);
        await db.Deliveries
            .Where(row => row.State != Storage.Rows.DeliveryState.Owed
                && db.Events.Any(happened => happened.Id == row.Event && happened.At < events))
            .ExecuteDeleteAsync(cancel);
        await db.Events
            .Where(row => row.At < events && !db.Deliveries.Any(delivery => delivery.Event == row.Id))
            .ExecuteDeleteAsync(cancel);
    }

    private static async Task Documents(AppDb db, DocumentStore documents, DateTimeOffset now, CancellationToken cancel)
    {
        var jobs = await db.JobDocuments.Where(link => link.Expires != null && link.Expires <= now)
            .Select(link => link.Job).Distinct().OrderBy(job => job).Take(JobsARound).ToArrayAsync(cancel);
        foreach (var job in jobs)
        {
            await using var transaction = await db.Database.BeginTransactionAsync(cancel);
            await documents.EraseExpired(job, now, cancel);
            await transaction.CommitAsync(cancel);
        }
    }
}
