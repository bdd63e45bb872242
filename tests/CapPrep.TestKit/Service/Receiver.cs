using System.Collections.Concurrent;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace CapPrep.TestKit.Service;

/// <summary>One call as it came in.</summary>
public sealed record ReceivedCall(string Id, string Timestamp, string Signature, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public string Text => Encoding.UTF8.GetString(Body);
}

/// <summary>A receiver of webhooks on a free loopback port: real listener, every call kept, answers by the test's will.</summary>
public sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<ReceivedCall> _calls = new();

    private Receiver(WebApplication app) => _app = app;

    /// <summary>Where to send.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>All calls so far, in the order they came in.</summary>
    public IReadOnlyList<ReceivedCall> Calls => [.. _calls];

    /// <summary>What the calls say together.</summary>
    public Ledger Ledger => new(Calls);

    /// <summary>Answers a call; the usual answer is 204.</summary>
    public Func<ReceivedCall, HttpContext, Task> Answer { get; set; } = (_, context) =>
    {
        context.Response.StatusCode = StatusCodes.Status204NoContent;
        return Task.CompletedTask;
    };

    public static async Task<Receiver> Start()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        var receiver = new Receiver(app);
        app.MapPost("/{**path}", receiver.Take);
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        receiver.Address = new Uri(address + "/hook");
        return receiver;
    }

    /// <summary>Waits until so many calls have come in; fails after twenty seconds.</summary>
    public async Task Until(int calls)
    {
        for (var tries = 0; tries < 400; tries++)
        {
            if (_calls.Count >= calls)
                return;
            await Task.Delay(50);
        }

        throw new TimeoutException($"{_calls.Count} of {calls} calls came in.");
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }

    private async Task Take(HttpContext context)
    {
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body);
        var headers = context.Request.Headers.ToDictionary(header => header.Key, header => header.Value.ToString(), StringComparer.OrdinalIgnoreCase);
        var call = new ReceivedCall(
            headers.GetValueOrDefault("webhook-id", ""),
            headers.GetValueOrDefault("webhook-timestamp", ""),
            headers.GetValueOrDefault("webhook-signature", ""),
            headers,
            body.ToArray());
        _calls.Enqueue(call);
        await Answer(call, context);
    }
}

/// <summary>What a receiver may hold a sender to: one id has one body, however often it comes.</summary>
public sealed class Ledger(IReadOnlyList<ReceivedCall> calls)
{
    /// <summary>Different ids, in the order of their first calls.</summary>
    public IReadOnlyList<string> Ids => [.. calls.Select(call => call.Id).Distinct()];

    /// <summary>What is wrong; empty: nothing.</summary>
    public IReadOnlyList<string> Faults()
    {
        var faults = new List<string>();
        foreach (var copies in calls.GroupBy(call => call.Id))
        {
            if (copies.Key.Length == 0)
                faults.Add("a call has no id");
            if (copies.Select(call => call.Text).Distinct().Count() > 1)
                faults.Add($"{copies.Key} came with different bodies");
        }

        return faults;
    }
}
