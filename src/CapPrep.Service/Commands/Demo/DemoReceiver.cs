using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// What an integrator builds: a small web application that takes the service's calls, believes only those that are
/// signed with its secret, and keeps what they say.
/// </summary>
internal sealed class DemoReceiver : IAsyncDisposable
{
    private static readonly TimeSpan Tolerance = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly WebApplication _app;

    // What each call was about, and whether it was genuine; one false call about a thing spoils it.
    private readonly ConcurrentDictionary<string, bool> _calls = new();
    private readonly TaskCompletionSource<string> _secret = new();

    private DemoReceiver(WebApplication app) => _app = app;

    public Uri Address { get; private set; } = null!;

    public static async Task<DemoReceiver> Start()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        var app = builder.Build();
        var receiver = new DemoReceiver(app);
        app.MapPost("/capprep", receiver.Take);
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        receiver.Address = new Uri(address + "/capprep");
        return receiver;
    }

    /// <summary>The secret that the service showed once, when the receiver was registered.</summary>
    public void Trust(string secret) => _secret.SetResult(secret);

    /// <summary>Waits until each answer that owes a call has had it, or patience ends; gives the answers with what came.</summary>
    public async Task<IReadOnlyList<DemoAnswer>> Await(IReadOnlyList<DemoAnswer> answers, CancellationToken stopping)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        limit.CancelAfter(Patience);
        while (answers.Any(answer => answer.CallOwed is { } about && !_calls.ContainsKey(about)) && !limit.IsCancellationRequested)
            await Task.Delay(50, stopping);
        return [.. answers.Select(answer => answer with { Webhook = StateOf(answer.CallOwed) })];
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private CallState StateOf(string? about) =>
        about is null ? CallState.NotOwed
        : !_calls.TryGetValue(about, out var genuine) ? CallState.Missing
        : genuine ? CallState.Verified
        : CallState.Forged;

    private async Task<IResult> Take(HttpRequest request, CancellationToken cancel)
    {
        using var reader = new StreamReader(request.Body, Encoding.UTF8);
        var body = await reader.ReadToEndAsync(cancel);
        var genuine = IsGenuine(await _secret.Task.WaitAsync(cancel), request.Headers, body);
        _calls.AddOrUpdate(AboutOf(body), genuine, (_, before) => before && genuine);
        return genuine ? TypedResults.NoContent() : TypedResults.Unauthorized();
    }

    /// <summary>Signed by the secret's holder, not long ago.</summary>
    private static bool IsGenuine(string webhookSecret, IHeaderDictionary headers, string body)
    {
        var (id, timestamp, signatures) = (headers["webhook-id"].ToString(), headers["webhook-timestamp"].ToString(), headers["webhook-signature"].ToString());
        if (!long.TryParse(timestamp, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds)
            || (TimeProvider.System.GetUtcNow() - DateTimeOffset.FromUnixTimeSeconds(seconds)).Duration() > Tolerance)
            return false;
        var secret = Convert.FromBase64String(webhookSecret["whsec_".Length..]);
        var signed = Encoding.UTF8.GetBytes($"{id}.{timestamp}.{body}");
        var wanted = "v1," + Convert.ToBase64String(HMACSHA256.HashData(secret, signed));
        return signatures.Split(' ').Any(given => CryptographicOperations.FixedTimeEquals(
            Encoding.ASCII.GetBytes(given), Encoding.ASCII.GetBytes(wanted)));
    }

    /// <summary>The job that an event is about; of a returned drop, its name.</summary>
    private static string AboutOf(string body)
    {
        using var call = JsonDocument.Parse(body);
        var data = call.RootElement.GetProperty("data");
        return data.GetProperty(call.RootElement.GetProperty("type").ValueEquals("drop.returned") ? "name" : "id").GetString()!;
    }
}
