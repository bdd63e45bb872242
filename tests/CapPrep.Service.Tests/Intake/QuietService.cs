using System.Collections.Concurrent;
using CapPrep.Service.Jobs;
using CapPrep.TestKit.Service;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

/// <summary>Notes what is handed over, and hands it to nobody: jobs stay queued.</summary>
internal sealed class NotedHandover : IHandover
{
    private readonly ConcurrentQueue<string> _jobs = new();

    public IReadOnlyCollection<string> Jobs => _jobs;

    public void Prepare(string jobId) => _jobs.Enqueue(jobId);

    public void Deliver(string deliveryId) => throw new InvalidOperationException("Nothing is delivered here.");
}

/// <summary>A service that takes jobs in and works none of them, shared by the tests of a class.</summary>
public sealed class QuietService : IAsyncLifetime
{
    internal NotedHandover Handover { get; } = new();

    public ServiceUnderTest Service { get; private set; } = null!;

    public HttpClient Client => Service.Client;

    public async ValueTask InitializeAsync() => Service = await ServiceUnderTest.Start(Options(Store.Sqlite));

    public ValueTask DisposeAsync() => Service.DisposeAsync();

    /// <summary>How such a service is started, for tests that need one of their own.</summary>
    internal static ServiceOptions Quiet(Store store, params (string Name, string Value)[] settings) => new()
    {
        Store = store,
        Settings = settings.Append(("Roles", "api")).ToDictionary(pair => pair.Item1, pair => (string?)pair.Item2),
        Adjust = services => services.AddSingleton<IHandover>(new NotedHandover()),
    };

    private ServiceOptions Options(Store store) =>
        Quiet(store) with { Adjust = services => services.AddSingleton<IHandover>(Handover) };
}
