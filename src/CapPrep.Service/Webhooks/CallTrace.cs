using System.Diagnostics;
using System.Net;
using System.Net.Security;
using System.Security.Authentication;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// What is seen of one connection while it is made and used. Times are real milliseconds, whatever clock the service
/// runs by, since real sockets are timed.
/// </summary>
internal sealed class CallTrace
{
    private readonly long _start = Stopwatch.GetTimestamp();
    private long _stepStart = Stopwatch.GetTimestamp();
    private int? _dns;
    private int? _connect;
    private int? _tls;
    private int? _firstByte;

    /// <summary>Address and port that the call went to.</summary>
    public string? Address { get; private set; }

    /// <summary>Version of TLS, such as <c>1.3</c>.</summary>
    public string? Tls { get; private set; }

    public bool IsConnected => Address is not null;

    /// <summary>The guard let no address pass.</summary>
    public bool IsForbidden { get; private set; }

    public void Resolved() => _dns = Step();

    public void Forbid() => IsForbidden = true;

    public void Connected(EndPoint? remote)
    {
        _connect = Step();
        Address = remote?.ToString();
    }

    /// <summary>The stream is ready for the request, encrypted or not.</summary>
    public void Ready(Stream stream)
    {
        if (stream is not SslStream encrypted)
            return;
        _tls = Step();
        Tls = encrypted.SslProtocol switch
        {
            SslProtocols.Tls12 => "1.2",
            SslProtocols.Tls13 => "1.3",
            var other => other.ToString(),
        };
    }

    public void HeadCame() => _firstByte = Since(_start);

    /// <summary>
    /// dns, connect and tls each take their own time; firstByte and total count from the beginning. What was not
    /// reached is absent.
    /// </summary>
    public byte[] Phases() => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        foreach (var (name, took) in new[] { ("dns", _dns), ("connect", _connect), ("tls", _tls), ("firstByte", _firstByte) })
        {
            if (took is { } milliseconds)
                writer.WriteNumber(name, milliseconds);
        }

        writer.WriteNumber("total", Since(_start));
        writer.WriteEndObject();
    });

    private int Step()
    {
        var took = Since(_stepStart);
        _stepStart = Stopwatch.GetTimestamp();
        return took;
    }

    private static int Since(long start) => (int)Stopwatch.GetElapsedTime(start).TotalMilliseconds;
}
