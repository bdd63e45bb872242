using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// What calls say about an endpoint as a whole: it fails, and is then paused with one probe at a time; it answers
/// again; or it is given up. Every statement is one update, so that processes need not agree beforehand; all of them
/// touch the endpoint before its deliveries, so that none waits for another in a circle.
/// </summary>
internal sealed partial class EndpointHealth(AppDb db, Settings settings, RetrySchedule schedule, ILogger<EndpointHealth> log)
{
    private static readonly int[] WarnAt = [50, 70, 90, 100];

    /// <summary>It took a delivery: earlier failures are forgotten.</summary>
    public Task Answered(string endpoint, CancellationToken cancel) => Working(endpoint)
        .Where(row => row.FailingSince != null)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, EndpointState.On)
                .SetProperty(row => row.PausedUntil, (DateTimeOffset?)null)
                .SetProperty(row => row.FailingSince, (DateTimeOffset?)null)
                .SetProperty(row => row.Warned, 0),
            cancel);

    /// <summary>A call failed: nothing goes out until the pause is over.</summary>
    public Task Failed(EndpointRow endpoint, DateTimeOffset now, TimeSpan? retryAfter, CancellationToken cancel)
    {
        var since = endpoint.FailingSince ?? now;
        var until = schedule.PausedUntil(since, now, retryAfter);
        return Working(endpoint.Id).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, EndpointState.Paused)
                .SetProperty(row => row.PausedUntil, until)
                .SetProperty(row => row.FailingSince, row => row.FailingSince ?? since),
            cancel);
    }

    /// <summary>
    /// Takes the turn of the one probe when the pause is over. Should the prober die, the next turn comes with the
    /// end of <paramref name="lease"/>.
    /// </summary>
    public async Task<bool> TakeProbe(string endpoint, DateTimeOffset now, TimeSpan lease, CancellationToken cancel)
    {
        DateTimeOffset? until = now + lease;
        return await Working(endpoint)
            .Where(row => row.PausedUntil <= now)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.PausedUntil, until), cancel) == 1;
    }

    /// <summary>No more calls until a person switches it on; what it is owed is given up and can be resent.</summary>
    public async Task SwitchOff(string endpoint, CancellationToken cancel)
    {
        await db.Endpoints
            .Where(row => row.Id == endpoint)
            .ExecuteUpdateAsync(
                set => set
                    .SetProperty(row => row.State, EndpointState.SwitchedOff)
                    .SetProperty(row => row.PausedUntil, (DateTimeOffset?)null),
                cancel);
        await GiveUpOwed(endpoint, cancel);
        SwitchedOff(log, endpoint);
    }

    public Task GiveUpOwed(string endpoint, CancellationToken cancel) =>
        GiveUp(db.Deliveries.Where(row => row.Target == endpoint), cancel);

    /// <summary>Ends deliveries that nobody is left to take: their endpoint was removed or switched off.</summary>
    public Task GiveUpOrphans(CancellationToken cancel) => GiveUp(
        db.Deliveries.Where(row => row.Target.StartsWith(Ids.Webhook)
            && !db.Endpoints.Any(endpoint => endpoint.Id == row.Target && endpoint.State != EndpointState.SwitchedOff)),
        cancel);

    /// <summary>Warns of endpoints whose time runs out, and switches off those whose time is up.</summary>
    public async Task Judge(DateTimeOffset now, CancellationToken cancel)
    {
        var failing = await db.Endpoints.AsNoTracking()
            .Where(row => row.FailingSince != null && (row.State == EndpointState.On || row.State == EndpointState.Paused))
            .OrderBy(row => row.Id)
            .ToArrayAsync(cancel);
        foreach (var endpoint in failing)
            await Judge(endpoint, now, cancel);
    }

    private async Task Judge(EndpointRow endpoint, DateTimeOffset now, CancellationToken cancel)
    {
        var budget = TimeSpan.FromHours(settings.Webhooks.SwitchOffAfterHours);
        var spent = (int)((now - endpoint.FailingSince) / budget * 100 ?? 0);
        if (WarnAt.LastOrDefault(mark => mark <= spent) is var reached && reached <= endpoint.Warned)
            return;

        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        var first = await Working(endpoint.Id)
            .Where(row => row.Warned < reached)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Warned, reached), cancel) == 1;
        if (first && reached == WarnAt[^1])
            await SwitchOff(endpoint.Id, cancel);
        await transaction.CommitAsync(cancel);
        if (first)
            RunningOut(log, endpoint.Id, reached);
    }

    private IQueryable<EndpointRow> Working(string endpoint) => db.Endpoints.Where(row =>
        row.Id == endpoint && (row.State == EndpointState.On || row.State == EndpointState.Paused));

    private static Task GiveUp(IQueryable<DeliveryRow> rows, CancellationToken cancel) => rows
        .Where(row => row.State == DeliveryState.Owed)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, DeliveryState.GivenUp)
                .SetProperty(row => row.NextAt, (DateTimeOffset?)null),
            cancel);

    [LoggerMessage(1, LogLevel.Warning, "The webhook endpoint {Endpoint} was switched off; what it was owed is given up")]
    private static partial void SwitchedOff(ILogger log, string endpoint);

    [LoggerMessage(2, LogLevel.Warning, "The webhook endpoint {Endpoint} only fails; {Spent} % of the time until it is switched off have passed")]
    private static partial void RunningOut(ILogger log, string endpoint, int spent);
}
