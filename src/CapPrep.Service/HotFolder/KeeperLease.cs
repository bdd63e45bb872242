using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// The right to keep one hot folder, which one process has at a time. It runs out soon after its holder ends, and is
/// renewed every third of its time.
/// </summary>
internal sealed class KeeperLease(HotFolderSettings folder, IServiceScopeFactory scopes, Me me, Settings settings)
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    private readonly string _name = "folder:" + folder.Root;
    private DateTimeOffset? _until;
    private bool _asked;

    private TimeSpan Length => TimeSpan.FromSeconds(Math.Min(Longest.TotalSeconds, settings.Workers.LeaseSeconds));

    /// <summary>True: this process has it, for some time to come.</summary>
    public async Task<bool> Hold(DateTimeOffset now, CancellationToken cancel)
    {
        if (_until - now > Length * 2 / 3)
            return true;
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var wanted = new LeaseRow { Shop = folder.Shop, Name = _name, Holder = me.Name, Until = now + Length, Fence = 0 };
        // With SQLite there is one process, so whoever held it before this start has ended.
        var evenIfHeld = !_asked && settings.Database.Provider == DatabaseProvider.Sqlite;
        var taken = await db.TakeLease(wanted, now, evenIfHeld, cancel);
        _asked = true;
        _until = taken ? wanted.Until : null;
        return taken;
    }

    /// <summary>Lets another process take over at once.</summary>
    public async Task Release(CancellationToken cancel)
    {
        if (_until is null)
            return;
        _until = null;
        await using var scope = scopes.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<AppDb>().Leases
            .Where(row => row.Name == _name && row.Holder == me.Name)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Until, DateTimeOffset.UnixEpoch), cancel);
    }
}
