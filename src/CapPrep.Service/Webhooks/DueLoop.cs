using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Hands due deliveries to the executor, a few of each endpoint, so that none fills the queue; once a minute looks
/// after endpoints that fail, deliveries whose endpoint is gone and test events that got lost on their way.
/// </summary>
internal sealed class DueLoop(
    IServiceScopeFactory scopes, IHandover handover, Handed handed, Me me, Settings settings) : ILoop
{
    /// <summary>Deliveries handed over and not seen back, at most, per worker.</summary>
    private const int AheadPerWorker = 4;

    private static readonly TimeSpan Sweep = TimeSpan.FromMinutes(1);

    private DateTimeOffset? _sweptAt;

    public string Name => "due-deliveries";

    public TimeSpan Every => TimeSpan.FromMilliseconds(500);

    public async Task RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        if (_sweptAt is null)
            await FreeLeases(db, cancel);
        if (_sweptAt is null || now - _sweptAt >= Sweep)
            await LookAfter(db, scope.ServiceProvider.GetRequiredService<SwitchOff>(), now, cancel);
        await HandOver(db, now, cancel);
    }

    /// <summary>With SQLite there is one process, so leases of others are those of the process before this one.</summary>
    private Task FreeLeases(AppDb db, CancellationToken cancel) =>
        settings.Database.Provider != DatabaseProvider.Sqlite
            ? Task.CompletedTask
            : db.Deliveries
                .Where(row => row.State == DeliveryState.Owed && row.LeaseUntil != null && row.LeaseHolder != me.Name)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null), cancel);

    private async Task LookAfter(AppDb db, SwitchOff switchOff, DateTimeOffset now, CancellationToken cancel)
    {
        await switchOff.Judge(now, cancel);
        await db.GiveUpOrphans(cancel);
        handed.ForgetLost(now);
        foreach (var test in await DueDeliveries.Tests(db, now).Select(row => row.Id).ToArrayAsync(cancel))
            HandOver(test, now);
        _sweptAt = now;
    }

    private async Task HandOver(AppDb db, DateTimeOffset now, CancellationToken cancel)
    {
        var endpoints = await DueDeliveries.Endpoints(db, now)
            .Select(row => new { row.Id, row.State })
            .ToArrayAsync(cancel);
        foreach (var endpoint in endpoints)
        {
            var most = endpoint.State == EndpointState.Paused ? 1 : settings.Webhooks.PerEndpoint;
            foreach (var delivery in await DueDeliveries.Of(db, endpoint.Id, now).Select(row => row.Id).Take(most).ToArrayAsync(cancel))
                HandOver(delivery, now);
        }
    }

    private void HandOver(string delivery, DateTimeOffset now)
    {
        if (handed.Count < settings.Webhooks.Concurrency * AheadPerWorker && handed.Add(delivery, now))
            handover.Deliver(delivery);
    }
}
