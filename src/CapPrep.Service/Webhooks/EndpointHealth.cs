using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// What calls say about an endpoint as a whole: it fails, and is then paused with one probe at a time, or it answers
/// again. Every change is one statement, so that processes need not agree beforehand; whoever changes an endpoint and
/// its deliveries begins with the endpoint, so that no two wait for each other.
/// </summary>
internal sealed class EndpointHealth(AppDb db, RetrySchedule schedule)
{
    /// <summary>It took a delivery: earlier failures are forgotten.</summary>
    public Task Answered(string endpoint, CancellationToken cancel) => db.Endpoints.Working(endpoint)
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
        return db.Endpoints.Working(endpoint.Id).ExecuteUpdateAsync(
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
        return await db.Endpoints.Working(endpoint)
            .Where(row => row.PausedUntil <= now)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.PausedUntil, until), cancel) == 1;
    }
}

internal static class EndpointQueries
{
    /// <summary>The endpoint, unless it is off.</summary>
    public static IQueryable<EndpointRow> Working(this IQueryable<EndpointRow> endpoints, string id) => endpoints.Where(row =>
        row.Id == id && (row.State == EndpointState.On || row.State == EndpointState.Paused));
}
