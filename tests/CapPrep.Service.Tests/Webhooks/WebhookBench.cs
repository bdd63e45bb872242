using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Webhooks;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CapPrep.Service.Tests.Webhooks;

/// <summary>
/// A service whose deliveries go out only when a test says so, by a clock that the test moves, to receivers on
/// loopback.
/// </summary>
internal sealed class WebhookBench : IAsyncDisposable
{
    private readonly HandedIds _handed = new();

    private WebhookBench()
    {
    }

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));

    public ServiceUnderTest Service { get; private set; } = null!;

    public static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    /// <param name="settings">Beside the allowed loopback network and a jitter of nothing.</param>
    public static async Task<WebhookBench> Start(
        Store store = Store.Sqlite, Dictionary<string, string?>? settings = null, Action<IServiceCollection>? adjust = null)
    {
        Stores.SkipUnlessThere(store);
        var bench = new WebhookBench();
        bench.Service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Clock = bench.Clock,
            Settings = new Dictionary<string, string?>(settings ?? [])
            {
                ["Roles"] = "api",
                ["Webhooks:AllowedNetworks"] = settings?.GetValueOrDefault("Webhooks:AllowedNetworks") ?? "127.0.0.0/8",
            },
            Adjust = services =>
            {
                services.AddSingleton<IHandover>(bench._handed).AddSingleton<Jitter>(() => 0);
                adjust?.Invoke(services);
            },
        });
        return bench;
    }

    /// <summary>An endpoint for job.finished.</summary>
    public async Task<(string Id, string Secret)> AddEndpoint(Uri url)
    {
        var answer = await Service.Client.PostAsJsonAsync("/v1/webhooks", new { url, types = new[] { EventTypes.JobFinished } }, Cancel);
        answer.EnsureSuccessStatusCode();
        var endpoint = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel);
        return (endpoint.GetProperty("id").GetString()!, endpoint.GetProperty("secret").GetString()!);
    }

    /// <summary>Something happens that is owed to the endpoints; gives the event.</summary>
    public Task<EventRow> Happen(string shop = ShopScope.Main, string? job = null) => Service.Within(null, async services =>
    {
        var db = services.GetRequiredService<AppDb>();
        await using var transaction = await db.Database.BeginTransactionAsync(Cancel);
        var position = await db.Next(shop, Counters.Position, Cancel);
        var data = Encoding.UTF8.GetBytes($"{{\"number\":{position},\"design\":\"Crest, größer\"}}");
        await services.GetRequiredService<EventLog>().Append(
            new NewEvent(shop, EventTypes.JobFinished, position, Clock.GetUtcNow(), data) { Job = job }, Cancel);
        await transaction.CommitAsync(Cancel);
        return await db.Events.AsNoTracking().SingleAsync(row => row.Shop == shop && row.Position == position, Cancel);
    });

    /// <summary>One round of the loop, and then every delivery that it handed over.</summary>
    public async Task Round()
    {
        await RunLoop();
        while (_handed.Take() is { } delivery)
            await Deliver(delivery);
    }

    public async Task Round(TimeSpan later)
    {
        Clock.Advance(later);
        await Round();
    }

    /// <summary>What was handed over so far is lost, as when the process dies.</summary>
    public void LoseHandovers()
    {
        while (_handed.Take() is not null)
        {
        }
    }

    /// <summary>One round of the loop; gives what it handed over, which is then not delivered.</summary>
    public async Task<IReadOnlyList<string>> RunLoop()
    {
        var loop = Service.Services.GetServices<ILoop>().OfType<DueLoop>().Single();
        await loop.RunOnce(Clock.GetUtcNow(), Cancel);
        return _handed.All;
    }

    public Task Deliver(string delivery) => Service.Within<object?>(null, async services =>
    {
        await services.GetRequiredService<IDeliverer>().Deliver(delivery, Cancel);
        return null;
    });

    public Task<DeliveryRow[]> Deliveries() => Service.Look(db => db.Deliveries.AsNoTracking().OrderBy(row => row.Id).ToArrayAsync(Cancel));

    public Task<AttemptRow[]> Attempts() => Service.Look(db => db.Attempts.AsNoTracking().OrderBy(row => row.Delivery).ThenBy(row => row.Number).ToArrayAsync(Cancel));

    public Task<EndpointRow> Endpoint(string id) => Service.Look(db => db.Endpoints.AsNoTracking().SingleAsync(row => row.Id == id, Cancel));

    public ValueTask DisposeAsync() => Service.DisposeAsync();

    private sealed class HandedIds : IHandover
    {
        private readonly ConcurrentQueue<string> _deliveries = new();

        public IReadOnlyList<string> All => [.. _deliveries];

        public string? Take() => _deliveries.TryDequeue(out var delivery) ? delivery : null;

        public void Prepare(string jobId)
        {
        }

        public void Deliver(string deliveryId) => _deliveries.Enqueue(deliveryId);
    }
}
