namespace CapPrep.Service.Webhooks;

/// <summary>When a failed delivery is tried again, and how long its endpoint is left alone. Pure arithmetic.</summary>
/// <param name="waitsSeconds">Waits before attempts 1 to n.</param>
internal sealed class RetrySchedule(IReadOnlyList<int> waitsSeconds)
{
    /// <summary>Longest wait that a receiver can ask for.</summary>
    public static readonly TimeSpan LongestRetryAfter = TimeSpan.FromHours(24);

    private const double JitterShare = 0.2;

    /// <summary>When the next attempt is due; null when there is none left.</summary>
    /// <param name="made">Attempts made, at least 1.</param>
    /// <param name="now">When the last one ended.</param>
    /// <param name="retryAfter">What the receiver asked for; null: nothing.</param>
    /// <param name="jitter">0 to 1: nothing to 20 % on top of the wait, never below it.</param>
    public DateTimeOffset? Next(int made, DateTimeOffset now, TimeSpan? retryAfter, double jitter)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(made, 1);
        if (made >= waitsSeconds.Count)
            return null;
        var wait = TimeSpan.FromSeconds(waitsSeconds[made] * (1 + (JitterShare * jitter)));
        return now + Longer(wait, retryAfter);
    }

    /// <summary>
    /// Until when an endpoint that fails since <paramref name="failingSince"/> gets no call: the next time at which a
    /// delivery that failed first then would be tried. It depends on the endpoint's failures only, so that one body
    /// that a receiver cannot take holds up the others for the first waits and no longer.
    /// </summary>
    public DateTimeOffset PausedUntil(DateTimeOffset failingSince, DateTimeOffset now, TimeSpan? retryAfter)
    {
        var at = failingSince;
        foreach (var wait in waitsSeconds)
        {
            at += TimeSpan.FromSeconds(wait);
            if (at > now)
                return now + Longer(at - now, retryAfter);
        }

        return now + Longer(TimeSpan.FromSeconds(waitsSeconds[^1]), retryAfter);
    }

    private static TimeSpan Longer(TimeSpan wait, TimeSpan? retryAfter)
    {
        var asked = retryAfter ?? TimeSpan.Zero;
        if (asked > LongestRetryAfter)
            asked = LongestRetryAfter;
        return asked > wait ? asked : wait;
    }
}

/// <summary>Gives a number from 0 to 1 each time it is asked.</summary>
internal delegate double Jitter();
