using System.Collections.Concurrent;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace CapPrep.TestKit.Service;

/// <summary>A receiver of webhooks on a free loopback port: real listener, every call kept, answers by the test's will.</summary>
public sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<ReceivedCall> _calls = new();
    private readonly ConcurrentQueue<Reply> _told = new();
    private readonly Lock _counting = new();
    private int _open;

    private Receiver(WebApplication app) => _app = app;

    /// <summary>Where to send.</summary>
    public Uri Address { get; private set; } = null!;

    public int Port => Address.Port;

    /// <summary>All calls so far, in the order they came in.</summary>
    public IReadOnlyList<ReceivedCall> Calls => [.. _calls];

    /// <summary>What the calls say together.</summary>
    public Ledger Ledger => new(Calls);

    /// <summary>Most calls that were open at the same time.</summary>
    public int MostAtOnce { get; private set; }

    /// <summary>Answers a call for which no reply was told; the usual answer is 204.</summary>
    public Func<ReceivedCall, HttpContext, Task> Answer { get; set; } = (_, context) => Reply.Ok.Send(context);

    /// <summary>Answers every call for which no reply was told.</summary>
    public Reply Usually
    {
        set => Answer = (_, context) => value.Send(context);
    }

    /// <param name="certificate">Listens by https with it; null: plain http.</param>
    public static async Task<Receiver> Start(X509Certificate2? certificate = null)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, listen =>
        {
            listen.Protocols = HttpProtocols.Http1;
            if (certificate is not null)
                listen.UseHttps(certificate);
        }));
        var app = builder.Build();
        var receiver = new Receiver(app);
        app.MapPost("/{**path}", receiver.Take);
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        receiver.Address = new Uri(address + "/hook");
        return receiver;
    }

    /// <summary>Answers the next calls so, one after the other.</summary>
    public void Tell(params ReadOnlySpan<Reply> replies)
    {
        foreach (var reply in replies)
            _told.Enqueue(reply);
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
        // Answers without end must not be waited for.
        using var now = new CancellationTokenSource(TimeSpan.Zero);
        await _app.StopAsync(now.Token);
        await _app.DisposeAsync();
    }

    private async Task Take(HttpContext context)
    {
        Count(1);
        try
        {
            var call = await Read(context.Request);
            _calls.Enqueue(call);
            await (_told.TryDequeue(out var reply) ? reply.Send(context) : Answer(call, context));
        }
        finally
        {
            Count(-1);
        }
    }

    private static async Task<ReceivedCall> Read(HttpRequest request)
    {
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body);
        var headers = request.Headers.ToDictionary(header => header.Key, header => header.Value.ToString(), StringComparer.OrdinalIgnoreCase);
        return new ReceivedCall(
            headers.GetValueOrDefault("webhook-id", ""),
            headers.GetValueOrDefault("webhook-timestamp", ""),
            headers.GetValueOrDefault("webhook-signature", ""),
            headers,
            body.ToArray());
    }

    private void Count(int step)
    {
        lock (_counting)
        {
            _open += step;
            MostAtOnce = Math.Max(MostAtOnce, _open);
        }
    }
}
