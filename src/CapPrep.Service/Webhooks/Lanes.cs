using System.Collections.Concurrent;
using CapPrep.Service.Plumbing;
using Polly;
using Polly.Registry;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// A few lanes to each endpoint. Nobody waits for a free one, so that an endpoint that answers slowly holds up only
/// its own deliveries and never the workers.
/// </summary>
internal sealed class Lanes(Settings settings) : IDisposable
{
    private readonly ResiliencePipelineRegistry<string> _registry = new();

    public ResiliencePipeline Of(string endpoint) => _registry.GetOrAddPipeline(
        endpoint, builder => builder.AddConcurrencyLimiter(settings.Webhooks.PerEndpoint, queueLimit: 0));

    public void Dispose() => _registry.Dispose();
}

/// <summary>Deliveries handed to the executor and not seen back, so that each round does not hand them over again.</summary>
internal sealed class Handed
{
    /// <summary>What was not seen back for so long is taken for lost.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private readonly ConcurrentDictionary<string, DateTimeOffset> _since = new(StringComparer.Ordinal);

    public int Count => _since.Count;

    public bool Add(string delivery, DateTimeOffset now) => _since.TryAdd(delivery, now);

    public void Forget(string delivery) => _since.TryRemove(delivery, out _);

    public void ForgetLost(DateTimeOffset now)
    {
        foreach (var (delivery, since) in _since)
        {
            if (now - since >= Patience)
                Forget(delivery);
        }
    }
}
