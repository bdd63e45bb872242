using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using Hangfire;
using Hangfire.Common;
using Hangfire.Server;

namespace CapPrep.Service.Bench;

/// <summary>
/// The two servers of a worker process: one prepares as many jobs as there are workers, one delivers. The loops run
/// beside the first.
/// </summary>
internal sealed class HangfireServers(
    JobStorage storage,
    JobActivator activator,
    IJobFilterProvider filters,
    Worker worker,
    IEnumerable<ILoop> loops,
    Settings settings,
    TimeProvider clock,
    ILogger<LoopProcess> log) : IHostedService
{
    private readonly List<BackgroundJobServer> _servers = [];

    public Task StartAsync(CancellationToken cancellationToken)
    {
        var processes = loops.Select(loop => new LoopProcess(loop, clock, log)).ToArray();
        _servers.Add(new BackgroundJobServer(Options(Queues.Prepare, settings.Workers.Count), storage, processes));
        _servers.Add(new BackgroundJobServer(Options(Queues.Deliver, settings.Webhooks.Concurrency), storage));
        return Task.CompletedTask;
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        foreach (var server in _servers)
            server.SendStop();
        foreach (var server in _servers)
            await server.WaitForShutdownAsync(cancellationToken);
        foreach (var server in _servers)
            server.Dispose();
    }

    private BackgroundJobServerOptions Options(string queue, int workers) => new()
    {
        ServerName = $"{queue}/{worker.Me}",
        Queues = [queue],
        WorkerCount = workers,
        Activator = activator,
        FilterProvider = filters,
        ShutdownTimeout = TimeSpan.FromSeconds(20),
        StopTimeout = TimeSpan.FromSeconds(1),
        CancellationCheckInterval = TimeSpan.FromSeconds(1),
        SchedulePollingInterval = TimeSpan.FromSeconds(15),
    };
}

/// <summary>Runs one loop for as long as the server runs; a round that throws is logged, and the next one comes.</summary>
internal sealed partial class LoopProcess(ILoop loop, TimeProvider clock, ILogger<LoopProcess> log) : IBackgroundProcess
{
    public void Execute(BackgroundProcessContext context)
    {
        try
        {
            loop.RunOnce(clock.GetUtcNow(), context.StoppingToken).GetAwaiter().GetResult();
        }
        catch (OperationCanceledException) when (context.IsStopping)
        {
            return;
        }
        catch (Exception fault)
        {
            RoundMissed(log, fault, loop.Name);
        }

        context.Wait(loop.Every);
    }

    public override string ToString() => loop.Name;

    [LoggerMessage(1, LogLevel.Error, "A round of the loop {Loop} was missed")]
    private static partial void RoundMissed(ILogger log, Exception fault, string loop);
}
