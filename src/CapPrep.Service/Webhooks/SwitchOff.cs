using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Switches endpoints off: those that said they are gone, and those that only failed for as long as the settings
/// allow. The other endpoints and the feed are told, and before the time is up they are warned.
/// </summary>
internal sealed partial class SwitchOff(AppDb db, EventLog events, Settings settings, ILogger<SwitchOff> log)
{
    private static readonly int[] WarnAt = [50, 70, 90, 100];

    /// <summary>
    /// The endpoint answered 410: no more calls until a person switches it on; what it is owed is given up. In the
    /// caller's transaction.
    /// </summary>
    public async Task Gone(EndpointRow endpoint, DateTimeOffset now, CancellationToken cancel)
    {
        await Off(endpoint.Id, cancel);
        await Tell(endpoint, "gone", EndpointState.SwitchedOff, null, now, cancel);
        IsGone(log, endpoint.Id);
    }

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
        var spent = (now - endpoint.FailingSince!.Value) / budget * 100;
        var reached = WarnAt.LastOrDefault(mark => mark <= spent);
        if (reached <= endpoint.Warned)
            return;

        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (!await Note(endpoint, reached, cancel))
            return;
        var isUp = reached == WarnAt[^1];
        if (isUp)
            await Off(endpoint.Id, cancel);
        await Tell(endpoint, "failing", isUp ? EndpointState.SwitchedOff : EndpointState.Paused, reached, now, cancel);
        await transaction.CommitAsync(cancel);
        RunsOut(log, endpoint.Id, reached);
    }

    /// <summary>False when it answered meanwhile or another process warned already.</summary>
    private async Task<bool> Note(EndpointRow endpoint, int reached, CancellationToken cancel) => await db.Endpoints
        .Working(endpoint.Id)
        .Where(row => row.Warned < reached && row.FailingSince != null)
        .ExecuteUpdateAsync(set => set.SetProperty(row => row.Warned, reached), cancel) == 1;

    private async Task Off(string endpoint, CancellationToken cancel)
    {
        await db.Endpoints
            .Where(row => row.Id == endpoint)
            .ExecuteUpdateAsync(
                set => set
                    .SetProperty(row => row.State, EndpointState.SwitchedOff)
                    .SetProperty(row => row.PausedUntil, (DateTimeOffset?)null),
                cancel);
        await db.GiveUpOwed(endpoint, cancel);
    }

    private async Task Tell(
        EndpointRow endpoint, string reason, EndpointState state, int? spent, DateTimeOffset now, CancellationToken cancel)
    {
        var position = await db.Next(endpoint.Shop, Counters.Position, cancel);
        var data = EndpointJson.Warning(endpoint, reason, state, spent, settings.Webhooks.SwitchOffAfterHours);
        await events.Append(
            new NewEvent(endpoint.Shop, EventTypes.EndpointWarning, position, now, data) { Except = endpoint.Id }, cancel);
    }

    [LoggerMessage(1, LogLevel.Warning, "The webhook endpoint {Endpoint} answered that it is gone and was switched off")]
    private static partial void IsGone(ILogger log, string endpoint);

    [LoggerMessage(2, LogLevel.Warning, "The webhook endpoint {Endpoint} only fails; {Spent} % of the time until it is switched off have passed")]
    private static partial void RunsOut(ILogger log, string endpoint, int spent);
}
