using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using Polly.RateLimiting;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Brings an owed event to its endpoint: claim, call, record. Once it has delivered it goes on with what the same
/// endpoint is owed, so that a burst need not wait for the next round of the loop.
/// </summary>
/// <remarks>
/// What a restart finds at the checkpoints: claimed — the lease runs out and the delivery is tried again; sent — the
/// same, so the receiver gets the same id and body once more; recorded — nothing is left to do.
/// </remarks>
internal sealed class DeliverWebhook(
    AppDb db, Lanes lanes, Handed handed, Attempt attempt, AttemptLog record, EndpointHealth health, Secrets secrets, Me me, Settings settings, TimeProvider clock)
    : ITargetDeliverer
{
    /// <summary>Deliveries that one turn makes at most, so that other endpoints get theirs.</summary>
    private const int MostInARow = 50;

    private static readonly TimeSpan LeaseMargin = TimeSpan.FromSeconds(10);

    public string TargetPrefix => Ids.Webhook;

    private TimeSpan Lease => TimeSpan.FromSeconds(settings.Webhooks.TimeoutSeconds) + LeaseMargin;

    public async Task Deliver(string deliveryId, CancellationToken cancel)
    {
        try
        {
            var target = await db.Deliveries
                .Where(row => row.Id == deliveryId && row.State == DeliveryState.Owed && row.Target.StartsWith(Ids.Webhook))
                .Select(row => row.Target)
                .SingleOrDefaultAsync(cancel);
            if (target is not null)
                await lanes.Of(target).ExecuteAsync(async token => await GoOn(deliveryId, target, token), cancel);
        }
        catch (RateLimiterRejectedException)
        {
            // All lanes to this endpoint are taken; whoever is in one goes on with this delivery.
        }
        finally
        {
            handed.Forget(deliveryId);
        }
    }

    private async Task GoOn(string first, string target, CancellationToken cancel)
    {
        var id = first;
        for (var made = 0; id is not null && made < MostInARow && await One(id, cancel); made++)
            id = await NextOwed(target, cancel);
    }

    /// <summary>One delivery; true when it arrived.</summary>
    private async Task<bool> One(string id, CancellationToken cancel)
    {
        if (await Claim(id, cancel) is not { } owed)
            return false;

        Checkpoints.Pass(Checkpoints.DeliveryClaimed);
        var report = await attempt.Make(CallOf(owed), cancel);
        Checkpoints.Pass(Checkpoints.DeliverySent);
        // Once it was sent it is recorded, even while the service stops.
        await record.Write(owed, report, CancellationToken.None);
        Checkpoints.Pass(Checkpoints.DeliveryRecorded);
        return report.Outcome == Outcome.Delivered;
    }

    /// <summary>The delivery with the right to attempt it; null when it must not be attempted now.</summary>
    private async Task<OwedDelivery?> Claim(string id, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        if (await OwedDelivery.Load(db, id, cancel) is not { } seen)
            return null;
        if (!seen.HasReceiver)
        {
            await db.GiveUpOwed(seen.Delivery.Target, cancel);
            return null;
        }

        if (!seen.MayGo(now) || await db.ClaimDelivery(id, me.Name, now, Lease, cancel) is not { } claim)
            return null;
        if (seen.NeedsProbe && !await health.TakeProbe(seen.Delivery.Target, now, Lease, cancel))
        {
            await Release(claim, cancel);
            return null;
        }

        return await OwedDelivery.Load(db, id, cancel) is { HasReceiver: true } owed ? owed with { Fence = claim.Fence } : null;
    }

    private Task Release(Claim claim, CancellationToken cancel) => db.Deliveries
        .Where(row => row.Id == claim.Id && row.Fence == claim.Fence)
        .ExecuteUpdateAsync(set => set.SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null), cancel);

    private Task<string?> NextOwed(string target, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        return DueDeliveries.Of(db, target, now).Select(row => (string?)row.Id).FirstOrDefaultAsync(cancel);
    }

    private Call CallOf(OwedDelivery owed)
    {
        var endpoint = owed.Endpoint!;
        var live = secrets.Unseal(endpoint.Secrets).Live(clock.GetUtcNow());
        return new Call(
            new Uri(endpoint.Url), owed.Event.Id, owed.Event.Body, [.. live.Select(secret => secret.Text)], owed.Traceparent);
    }
}
