namespace CapPrep.Service.HotFolder;

/// <summary>Runs the keepers of a process with the role folder, each in its own time, until the service stops.</summary>
internal sealed partial class KeeperService(IEnumerable<Keeper> keepers, TimeProvider clock, ILogger<KeeperService> log) : BackgroundService
{
    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(keepers.Select(keeper => Task.Run(() => Keep(keeper, stoppingToken), CancellationToken.None)));

    private async Task Keep(Keeper keeper, CancellationToken stopping)
    {
        try
        {
            while (!stopping.IsCancellationRequested)
            {
                if (!await Round(keeper, stopping))
                    await Task.Delay(TimeSpan.FromSeconds(keeper.Folder.ScanSeconds), clock, stopping);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // The service stops; every drop stands at a step from which the next keeper goes on.
        }

        await Leave(keeper);
    }

    /// <summary>True: there is more to do at once.</summary>
    private async Task<bool> Round(Keeper keeper, CancellationToken stopping)
    {
        try
        {
            return await keeper.RunOnce(clock.GetUtcNow(), stopping);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            Missed(log, fault, keeper.Folder.Root);
            return false;
        }
    }

    private async Task Leave(Keeper keeper)
    {
        try
        {
            await keeper.Leave(CancellationToken.None);
        }
        catch (Exception fault)
        {
            // The lease runs out by itself.
            Missed(log, fault, keeper.Folder.Root);
        }
    }

    [LoggerMessage(1, LogLevel.Error, "A round over the hot folder {Root} was missed")]
    private static partial void Missed(ILogger log, Exception fault, string root);
}
