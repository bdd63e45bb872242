using System.Globalization;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Jobs;

/// <summary>
/// <c>Prefer: wait=N</c> (RFC 7240), the same for every address that takes it: register before the commit that may
/// be waited for, then wait for the release, or look every 200 ms, since another process may do the work.
/// </summary>
internal sealed class Waiting(AppDb db, Waiters waiters, Settings settings, TimeProvider clock)
{
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(200);

    /// <summary>
    /// Registers the request; null when it does not ask to wait, asks in a form nobody reads, or too many wait.
    /// </summary>
    /// <param name="key">Id of the job, or name of the shop for its events.</param>
    public Waiter? Enter(HttpRequest request, string key)
    {
        if (Asked(request) is not { } seconds)
            return null;
        var most = Math.Min(seconds, settings.Http.MaxWaitSeconds);
        var waiter = waiters.Enter(key, TimeSpan.FromSeconds(most));
        if (waiter is not null)
            request.HttpContext.Response.Headers["Preference-Applied"] = string.Create(CultureInfo.InvariantCulture, $"wait={most}");
        return waiter;
    }

    /// <summary>Waits until the job has ended or the time is over; gives the row as it is then, or null when there is none.</summary>
    /// <param name="waiter">Null: looks once.</param>
    public async Task<JobRow?> ForEnd(Waiter? waiter, string id, CancellationToken cancel)
    {
        await Until(waiter, () => HasEnded(id, cancel), cancel);
        return await db.Jobs.AsNoTracking().SingleOrDefaultAsync(job => job.Id == id, cancel);
    }

    /// <summary>Asks again and again until the answer is yes, the time is over or the service stops.</summary>
    public async Task Until(Waiter? waiter, Func<Task<bool>> happened, CancellationToken cancel)
    {
        if (waiter is null)
            return;
        var begin = clock.GetTimestamp();
        while (!await happened())
        {
            var left = waiter.Most - clock.GetElapsedTime(begin);
            if (left <= TimeSpan.Zero || waiter.Stopping)
                return;
            await waiter.Pause(left < Step ? left : Step, clock, cancel);
        }
    }

    /// <summary>Seconds the request wants to wait; null when it says nothing that can be read.</summary>
    public static int? Asked(HttpRequest request)
    {
        foreach (var preference in request.Headers["Prefer"].SelectMany(line => (line ?? "").Split(',', ';')))
        {
            var parts = preference.Split('=', 2, StringSplitOptions.TrimEntries);
            if (parts is [var name, var value]
                && name.Equals("wait", StringComparison.OrdinalIgnoreCase)
                && int.TryParse(value.Trim('"'), NumberStyles.None, CultureInfo.InvariantCulture, out var seconds))
            {
                return seconds;
            }
        }

        return null;
    }

    private async Task<bool> HasEnded(string id, CancellationToken cancel)
    {
        var open = await db.Jobs.AnyAsync(
            job => job.Id == id && (job.Status == JobStatus.Queued || job.Status == JobStatus.Working), cancel);
        return !open;
    }
}
