using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;

namespace CapPrep.Service.Bench;

/// <summary>Who this process is to the others, and which jobs it has in hand.</summary>
internal sealed class Worker
{
    private readonly ConcurrentDictionary<string, long> _inHand = new();

    /// <summary>Name that leases carry; differs for every start of every process.</summary>
    public string Me { get; } = string.Create(
        CultureInfo.InvariantCulture, $"{Environment.MachineName}/{Environment.ProcessId}/{RandomNumberGenerator.GetHexString(8, lowercase: true)}");

    /// <summary>Ids of the jobs whose leases are to be renewed.</summary>
    public IReadOnlyList<string> InHand => [.. _inHand.Keys];

    /// <summary>Holds a job until disposed.</summary>
    public IDisposable Hold(string jobId, long fence)
    {
        _inHand[jobId] = fence;
        return new Held(this, jobId, fence);
    }

    private sealed class Held(Worker owner, string jobId, long fence) : IDisposable
    {
        public void Dispose() => owner._inHand.TryRemove(KeyValuePair.Create(jobId, fence));
    }
}

/// <summary>
/// Lets a suspect job run alone in this process: one that was in flight beside others when a process died, so that a
/// second death says which of them it was.
/// </summary>
internal sealed class AloneGate(int workers) : IDisposable
{
    private readonly SemaphoreSlim _places = new(workers, workers);
    private readonly SemaphoreSlim _turn = new(1, 1);

    public async Task<IDisposable> Enter(bool alone, CancellationToken cancel)
    {
        var wanted = alone ? workers : 1;
        await _turn.WaitAsync(cancel);
        try
        {
            for (var taken = 0; taken < wanted; taken++)
                await Take(taken, cancel);
        }
        finally
        {
            _turn.Release();
        }

        return new Places(_places, wanted);
    }

    public void Dispose()
    {
        _places.Dispose();
        _turn.Dispose();
    }

    private async Task Take(int taken, CancellationToken cancel)
    {
        try
        {
            await _places.WaitAsync(cancel);
        }
        catch (OperationCanceledException)
        {
            if (taken > 0)
                _places.Release(taken);
            throw;
        }
    }

    private sealed class Places(SemaphoreSlim places, int count) : IDisposable
    {
        public void Dispose() => places.Release(count);
    }
}
