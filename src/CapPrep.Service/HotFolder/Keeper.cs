using System.Data.Common;
using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Keeps one hot folder: looks at it again and again, takes what has settled, answers what has ended, returns what
/// cannot be taken. Any number of processes may have a keeper for the folder; the one with the lease works.
/// </summary>
internal sealed partial class Keeper(
    HotFolderSettings folder, IServiceScopeFactory scopes, KeptRoots kept, Me me, Settings settings, TimeProvider clock, ILogger<Keeper> log)
{
    /// <summary>So that answers do not wait until ten thousand designs were taken.</summary>
    private const int MostInARow = 200;

    private static readonly TimeSpan ClearedEvery = TimeSpan.FromHours(1);

    private readonly FolderPlaces _places = new(folder.Root);
    private readonly KeeperLease _lease = new(folder, scopes, me, settings);
    private readonly Settling _settling = new(TimeSpan.FromSeconds(folder.QuietSeconds));
    private readonly Pairing _pairing = new(TimeSpan.FromMinutes(folder.PatienceMinutes));
    private IReadOnlyList<string> _lastTrouble = [];
    private DateTimeOffset? _lastScan;
    private DateTimeOffset? _clearedAt;
    private DateTimeOffset _lastId;

    public HotFolderSettings Folder => folder;

    /// <summary>One round. False: nothing is left to do before the next look is due.</summary>
    public async Task<bool> RunOnce(DateTimeOffset now, CancellationToken cancel)
    {
        if (!await IsKept(now, cancel))
            return false;
        var round = new Round(now) { LastScan = _lastScan };
        await Try(round, () => GoOnWithOpenDrops(round, cancel));
        await Try(round, () => TakeWhatSettled(round, cancel));
        await Try(round, () => AnswerWhatEnded(round, cancel));
        await Try(round, () => ClearKept(round));
        await Try(round, () => WriteStatus(round, cancel));
        LogTrouble(round);
        return round.HasMore;
    }

    /// <summary>Lets another process take over at once.</summary>
    public Task Leave(CancellationToken cancel)
    {
        kept.Remove(folder.Root);
        return _lease.Release(cancel);
    }

    private async Task<bool> IsKept(DateTimeOffset now, CancellationToken cancel)
    {
        if (await _lease.Hold(now, cancel))
        {
            if (!kept.Has(folder.Root))
                await Within(services => DeliverAnswer.FreeLeases(services.GetRequiredService<AppDb>(), folder.Root, me.Name, cancel));
            kept.Add(folder.Root);
            return true;
        }

        kept.Remove(folder.Root);
        _settling.Forget();
        return false;
    }

    private async Task GoOnWithOpenDrops(Round round, CancellationToken cancel)
    {
        var open = await Within(services => services.GetRequiredService<Drops>().Open(folder.Root, cancel));
        await OneByOne(round, open, drop => Within(services => services.GetRequiredService<TakeDrop>().GoOn(_places, drop, cancel)), cancel);
    }

    private async Task TakeWhatSettled(Round round, CancellationToken cancel)
    {
        foreach (var place in _places.Folders)
            Directory.CreateDirectory(place);
        var sorted = _pairing.Sort(_settling.Look(DropScan.Look(_places.Drop), round.At), round.At);
        (round.Waiting, round.LastScan, _lastScan) = (sorted.Waiting, round.At, round.At);
        foreach (var line in sorted.Trouble)
            round.Note(line);
        if (await IsOverloaded(cancel))
        {
            NoteOverload(round);
            return;
        }

        var all = await OneByOne(
            round,
            sorted.Parcels.Take(MostInARow),
            parcel => Within(services => services.GetRequiredService<TakeDrop>().Take(_places, parcel, NewId(), cancel)),
            cancel);
        round.HasMore = all && sorted.Parcels.Count > MostInARow;
    }

    /// <summary>
    /// Takes one after the other, as long as there is room for jobs and this process keeps the folder; one that cannot
    /// be taken does not keep the others out. True: all were taken.
    /// </summary>
    private async Task<bool> OneByOne<T>(Round round, IEnumerable<T> items, Func<T, Task<bool>> take, CancellationToken cancel)
    {
        var (all, hasRoom) = (true, true);
        foreach (var item in items)
        {
            if (!await _lease.Hold(clock.GetUtcNow(), cancel))
                return false;
            all &= await Try(round, async () => hasRoom = await take(item));
            if (hasRoom)
                continue;
            NoteOverload(round);
            return false;
        }

        return all;
    }

    private async Task AnswerWhatEnded(Round round, CancellationToken cancel)
    {
        var owed = await Within(services => DeliverAnswer.Owed(services.GetRequiredService<AppDb>(), folder.Root, round.At)
            .Select(row => row.Id).Take(MostInARow).ToArrayAsync(cancel));
        foreach (var delivery in owed)
        {
            await Within(services => services.GetRequiredService<DeliverAnswer>().Bring(delivery, cancel));
            if (kept.Trouble(folder.Root) is not null || !await _lease.Hold(clock.GetUtcNow(), cancel))
                break;
        }

        if (kept.Trouble(folder.Root) is { } trouble)
            round.Note(trouble);
        var others = await Within(services => services.GetRequiredService<Drops>().WithoutDelivery(folder.Root, MostInARow, cancel));
        await OneByOne(round, others, drop => Within(services => services.GetRequiredService<AnswerDrop>().Run(_places, drop, cancel)), cancel);
    }

    private Task ClearKept(Round round)
    {
        if (_clearedAt is null || round.At - _clearedAt >= ClearedEvery)
        {
            KeptFolder.Clear(_places, folder.KeepDays, round.At);
            _clearedAt = round.At;
        }

        return Task.CompletedTask;
    }

    private async Task WriteStatus(Round round, CancellationToken cancel)
    {
        FolderCounts? counts = null;
        await Try(round, async () => counts = await Within(services => FolderCounts.Of(services.GetRequiredService<AppDb>(), folder.Root, round.At, cancel)));
        FolderStatus.Write(_places, round, counts);
    }

    private Task<bool> IsOverloaded(CancellationToken cancel) => Within(async services =>
        await services.GetRequiredService<AppDb>().Jobs.IgnoreQueryFilters()
            .CountAsync(job => job.Status == JobStatus.Queued || job.Status == JobStatus.Working, cancel) >= settings.QueueMaxWaiting);

    private void NoteOverload(Round round) =>
        round.Note($"{settings.QueueMaxWaiting} jobs are waiting; nothing more is taken until there are fewer.");

    /// <summary>
    /// One part of a round must not keep the others from being done; what hinders it stands in the status. True: done.
    /// </summary>
    private async Task<bool> Try(Round round, Func<Task> part)
    {
        try
        {
            await part();
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            round.Note($"The folder cannot be worked in; it is tried again. {fault.Message}");
        }
        catch (Exception fault) when (fault is DbException or DbUpdateException)
        {
            Missed(log, fault, folder.Root);
            round.Note("The database does not answer; it is tried again.");
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            Missed(log, fault, folder.Root);
            round.Note("Something is wrong on our side, the log says what; it is tried again.");
        }

        return false;
    }

    private async Task<T> Within<T>(Func<IServiceProvider, Task<T>> work)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<ShopScope>().Shop = folder.Shop;
        return await work(scope.ServiceProvider);
    }

    /// <summary>No two in one millisecond: the beginning of an id, which is its time, is part of folders' names.</summary>
    private string NewId()
    {
        var now = clock.GetUtcNow();
        var next = _lastId.AddMilliseconds(1);
        _lastId = now > next ? now : next;
        return Ids.Drop + Guid.CreateVersion7(_lastId).ToString("N");
    }

    private void LogTrouble(Round round)
    {
        foreach (var line in round.Trouble.Except(_lastTrouble))
            InTrouble(log, folder.Root, line);
        _lastTrouble = round.Trouble;
    }

    [LoggerMessage(1, LogLevel.Error, "A part of a round over the hot folder {Root} was missed")]
    private static partial void Missed(ILogger log, Exception fault, string root);

    [LoggerMessage(2, LogLevel.Warning, "Hot folder {Root}: {Trouble}")]
    private static partial void InTrouble(ILogger log, string root, string trouble);
}
