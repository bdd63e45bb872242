using System.Security.Cryptography;
using System.Text;

namespace CapPrep.TestKit.Service;

/// <summary>One request that a receiver got.</summary>
/// <param name="At">When, by the system's clock.</param>
/// <param name="Headers">Names in lower case.</param>
public sealed record Received(
    DateTimeOffset At, string Method, string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public string Id => Headers["webhook-id"];

    public long Timestamp => long.Parse(Headers["webhook-timestamp"]);

    /// <summary>
    /// Whether one of the signatures was made with the secret, as a receiver would check it that knows the Standard
    /// Webhooks text only.
    /// </summary>
    public bool IsSignedWith(string secret)
    {
        var key = Convert.FromBase64String(secret["whsec_".Length..]);
        byte[] signed = [.. Encoding.UTF8.GetBytes($"{Id}.{Timestamp}."), .. Body];
        var wanted = "v1," + Convert.ToBase64String(HMACSHA256.HashData(key, signed));
        return Headers["webhook-signature"].Split(' ').Contains(wanted);
    }
}

/// <summary>What a receiver answers.</summary>
public sealed record Reply
{
    public static readonly Reply Ok = new();

    public int Status { get; init; } = 204;

    public string Body { get; init; } = "";

    public IReadOnlyDictionary<string, string> Headers { get; init; } = new Dictionary<string, string>();

    /// <summary>Time before the head is sent.</summary>
    public TimeSpan Delay { get; init; }

    /// <summary>After the head, one byte every so long, without end; null: the body at once.</summary>
    public TimeSpan? Drip { get; init; }

    /// <summary>As many bytes as the sender takes, without end.</summary>
    public bool Endless { get; init; }

    /// <summary>Breaks the connection off instead of answering.</summary>
    public bool Reset { get; init; }

    public static Reply Of(int status, string body = "") => new() { Status = status, Body = body };

    /// <summary>The receiver asks for a wait.</summary>
    public static Reply Later(int status, int seconds) =>
        new() { Status = status, Headers = new Dictionary<string, string> { ["Retry-After"] = seconds.ToString() } };
}
