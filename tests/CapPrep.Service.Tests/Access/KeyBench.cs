using CapPrep.Service.Tests.Catalog;
using CapPrep.TestKit.Service;
using Microsoft.Extensions.Time.Testing;

namespace CapPrep.Service.Tests.Access;

/// <summary>A service that works no jobs and whose clock stands still.</summary>
internal sealed class KeyBench : IAsyncDisposable
{
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 8, 19, 4, TimeSpan.Zero));

    public ServiceUnderTest Service { get; private set; } = null!;

    public static async Task<KeyBench> Start(Store store)
    {
        Stores.SkipUnlessThere(store);
        var bench = new KeyBench();
        bench.Service = await ServiceUnderTest.Start(Intake.QuietService.Quiet(store) with { Clock = bench.Clock });
        return bench;
    }

    /// <summary>Makes a key as a caller does.</summary>
    public Task<Answer> Add(string body) => Service.Client.Call(HttpMethod.Post, "/v1/keys", body);

    public ValueTask DisposeAsync() => Service.DisposeAsync();
}
