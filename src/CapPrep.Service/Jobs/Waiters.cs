using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Jobs;

/// <summary>
/// Requests of this process that wait for something to happen: under the id of a job for its end, under a shop's
/// name for its next event. At most so many as the settings allow, and none once the service stops.
/// </summary>
internal sealed class Waiters : IDisposable
{
    private readonly Lock _gate = new();
    private readonly HashSet<Waiter> _all = [];
    private readonly int _most;
    private readonly CancellationToken _stopping;
    private readonly CancellationTokenRegistration _registration;

    public Waiters(Settings settings, IHostApplicationLifetime lifetime)
    {
        _most = settings.Http.MaxWaiting;
        _stopping = lifetime.ApplicationStopping;
        _registration = _stopping.Register(() => Release(_ => true));
    }

    public bool Stopping => _stopping.IsCancellationRequested;

    /// <summary>Begins to wait; null when enough wait already or the service stops.</summary>
    /// <param name="most">Longest time it may wait.</param>
    public Waiter? Enter(string key, TimeSpan most)
    {
        lock (_gate)
        {
            if (Stopping || _all.Count >= _most)
                return null;
            var waiter = new Waiter(this, key, most);
            _all.Add(waiter);
            return waiter;
        }
    }

    /// <summary>Lets everybody go who waits under this key.</summary>
    public void Release(string key) => Release(waiter => waiter.Key == key);

    public void Dispose() => _registration.Dispose();

    internal void Leave(Waiter waiter)
    {
        lock (_gate)
            _all.Remove(waiter);
    }

    private void Release(Func<Waiter, bool> which)
    {
        Waiter[] released;
        lock (_gate)
            released = [.. _all.Where(which)];
        foreach (var waiter in released)
            waiter.Release();
    }
}

/// <summary>One waiting request; leaves when disposed.</summary>
internal sealed class Waiter(Waiters owner, string key, TimeSpan most) : IDisposable
{
    private TaskCompletionSource _released = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public string Key { get; } = key;

    /// <summary>Longest time it may wait.</summary>
    public TimeSpan Most { get; } = most;

    public bool Stopping => owner.Stopping;

    /// <summary>Waits for the release, at most for one step.</summary>
    public async Task Pause(TimeSpan step, TimeProvider clock, CancellationToken cancel)
    {
        await Task.WhenAny(_released.Task, Task.Delay(step, clock, cancel));
        cancel.ThrowIfCancellationRequested();
        if (_released.Task.IsCompleted && !Stopping)
            _released = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
    }

    public void Dispose() => owner.Leave(this);

    internal void Release() => _released.TrySetResult();
}
