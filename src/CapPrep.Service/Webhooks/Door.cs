using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;

namespace CapPrep.Service.Webhooks;

/// <summary>Whose certificates are trusted.</summary>
/// <param name="Roots">Null: the system's.</param>
internal sealed record ReceiverTrust(X509Certificate2Collection? Roots);

/// <summary>
/// Makes the one connection of a call. Name resolution, judgment and connection are one step, so that nothing can
/// change in between; a connection serves one call only, so that every call is judged anew.
/// </summary>
internal sealed class Door(AddressGuard guard, ReceiverTrust trust)
{
    private const int MaxHeadKilobytes = 16;

    private static readonly TimeSpan PerAddress = TimeSpan.FromSeconds(5);

    public HttpMessageInvoker Open(CallTrace trace) => new(new SocketsHttpHandler
    {
        ActivityHeadersPropagator = null,
        AllowAutoRedirect = false,
        AutomaticDecompression = DecompressionMethods.None,
        ConnectCallback = (context, cancel) => Connect(context, trace, cancel),
        Credentials = null,
        MaxResponseDrainSize = 0,
        MaxResponseHeadersLength = MaxHeadKilobytes,
        PlaintextStreamFilter = (context, _) =>
        {
            trace.Ready(context.PlaintextStream);
            return ValueTask.FromResult(context.PlaintextStream);
        },
        PooledConnectionLifetime = TimeSpan.Zero,
        SslOptions = Encryption(),
        UseCookies = false,
        UseProxy = false,
    });

    private SslClientAuthenticationOptions Encryption()
    {
        var options = new SslClientAuthenticationOptions { EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13 };
        if (trust.Roots is not { } roots)
            return options;
        options.CertificateChainPolicy = new X509ChainPolicy
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            RevocationMode = X509RevocationMode.NoCheck,
        };
        options.CertificateChainPolicy.CustomTrustStore.AddRange(roots);
        return options;
    }

    private async ValueTask<Stream> Connect(SocketsHttpConnectionContext context, CallTrace trace, CancellationToken cancel)
    {
        var encrypted = context.InitialRequestMessage.RequestUri?.Scheme == Uri.UriSchemeHttps;
        var (host, port) = (context.DnsEndPoint.Host, context.DnsEndPoint.Port);
        var answers = await Dns.GetHostAddressesAsync(host, cancel);
        trace.Resolved();
        var chosen = guard.Choose(answers, port, encrypted);
        if (chosen.Count == 0)
        {
            trace.Forbid();
            throw new HttpRequestException("The name has an address that may not be called.");
        }

        return await ConnectFirst(chosen, port, trace, cancel);
    }

    private static async Task<Stream> ConnectFirst(
        IReadOnlyList<IPAddress> addresses, int port, CallTrace trace, CancellationToken cancel)
    {
        for (var i = 0; ; i++)
        {
            var last = i == addresses.Count - 1;
            var socket = new Socket(addresses[i].AddressFamily, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
            try
            {
                await ConnectOne(socket, new IPEndPoint(addresses[i], port), last, cancel);
                trace.Connected(socket.RemoteEndPoint);
                return new NetworkStream(socket, ownsSocket: true);
            }
            catch (Exception fault) when (fault is SocketException or OperationCanceledException)
            {
                socket.Dispose();
                if (last || cancel.IsCancellationRequested)
                    throw;
            }
        }
    }

    // An address that does not answer must not use up the time of the next one.
    private static async Task ConnectOne(Socket socket, IPEndPoint end, bool last, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        if (!last)
            limit.CancelAfter(PerAddress);
        await socket.ConnectAsync(end, limit.Token);
    }
}
