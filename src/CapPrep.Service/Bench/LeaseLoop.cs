using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Bench;

/// <summary>Renews the leases of all jobs this process has in hand, every third of a lease.</summary>
internal sealed class LeaseLoop(IServiceScopeFactory scopes, Worker worker, Settings settings) : ILoop
{
    public string Name => "leases";

    public TimeSpan Every => TimeSpan.FromSeconds(settings.Workers.LeaseSeconds / 3.0);

    public async Task RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        var ids = worker.InHand;
        if (ids.Count == 0)
            return;
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        await db.RenewJobLeases(worker.Me, ids, now.AddSeconds(settings.Workers.LeaseSeconds), cancel);
    }
}
