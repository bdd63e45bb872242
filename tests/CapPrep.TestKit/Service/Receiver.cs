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

/// <summary>
/// A receiver of webhooks: a real listener on a free loopback port that keeps every request and answers as it was
/// told, 204 when it was told nothing.
/// </summary>
public sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<Reply> _replies = new();
    private readonly List<Received> _requests = [];
    private readonly SemaphoreSlim _came = new(0);
    private int _atOnce;

    private Receiver(X509Certificate2? certificate)
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
        _app = builder.Build();
        _app.Run(Handle);
    }

    /// <summary>Address of a path on this receiver.</summary>
    public Uri Url { get; private set; } = null!;

    public int Port => Url.Port;

    public Ledger Ledger { get; } = new();

    /// <summary>What is answered once the told replies are used up.</summary>
    public Reply Usually { get; set; } = Reply.Ok;

    /// <summary>Most requests that were open at the same time.</summary>
    public int MostAtOnce { get; private set; }

    /// <summary>All requests so far, in the order they came.</summary>
    public IReadOnlyList<Received> Requests
    {
        get
        {
            lock (_requests)
                return [.. _requests];
        }
    }

    /// <param name="certificate">Listens by https with it; null: plain http.</param>
    public static async Task<Receiver> Start(X509Certificate2? certificate = null)
    {
        var receiver = new Receiver(certificate);
        await receiver._app.StartAsync();
        var address = receiver._app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        receiver.Url = new Uri(new Uri(address), "/hook");
        return receiver;
    }

    /// <summary>Answers the next requests so, one after the other.</summary>
    public void Tell(params ReadOnlySpan<Reply> replies)
    {
        foreach (var reply in replies)
            _replies.Enqueue(reply);
    }

    /// <summary>Waits until one more request has come and gives it.</summary>
    public async Task<Received> Next(CancellationToken cancel)
    {
        await _came.WaitAsync(cancel);
        return Requests[^1];
    }

    public async ValueTask DisposeAsync()
    {
        using var now = new CancellationTokenSource(TimeSpan.Zero);
        await _app.StopAsync(now.Token);
        await _app.DisposeAsync();
        _came.Dispose();
    }

    private async Task Handle(HttpContext context)
    {
        try
        {
            await Answer(context);
        }
        finally
        {
            Interlocked.Decrement(ref _atOnce);
        }
    }

    private async Task Answer(HttpContext context)
    {
        Count(Interlocked.Increment(ref _atOnce));
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, context.RequestAborted);
        Keep(context.Request, body.ToArray());
        var reply = _replies.TryDequeue(out var told) ? told : Usually;
        await Task.Delay(reply.Delay, context.RequestAborted);
        if (reply.Reset)
        {
            context.Abort();
            return;
        }

        context.Response.StatusCode = reply.Status;
        foreach (var (name, value) in reply.Headers)
            context.Response.Headers[name] = value;
        await Write(context, reply);
    }

    private void Count(int atOnce)
    {
        lock (_requests)
            MostAtOnce = Math.Max(MostAtOnce, atOnce);
    }

    private void Keep(HttpRequest request, byte[] body)
    {
        var headers = request.Headers.ToDictionary(header => header.Key.ToLowerInvariant(), header => header.Value.ToString());
        var received = new Received(DateTimeOffset.UtcNow, request.Method, request.Path, headers, body);
        lock (_requests)
            _requests.Add(received);
        if (headers.TryGetValue("webhook-id", out var id))
            Ledger.Note(id, body);
        _came.Release();
    }

    private static async Task Write(HttpContext context, Reply reply)
    {
        var cancel = context.RequestAborted;
        if (reply.Body.Length > 0)
            await context.Response.WriteAsync(reply.Body, cancel);
        while ((reply.Endless || reply.Drip is not null) && !cancel.IsCancellationRequested)
        {
            await context.Response.WriteAsync(reply.Endless ? new string('x', 8192) : ".", cancel);
            await context.Response.Body.FlushAsync(cancel);
            await Task.Delay(reply.Drip ?? TimeSpan.Zero, cancel);
        }
    }
}
