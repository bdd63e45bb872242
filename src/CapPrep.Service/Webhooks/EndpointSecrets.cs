using System.Text.Json;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Webhooks;

/// <summary>One signing secret.</summary>
/// <param name="Text">With its prefix; leaves the service once, when it is made.</param>
/// <param name="Ends">From when it signs no more; null: it stays.</param>
internal sealed record EndpointSecret(string Text, DateTimeOffset Created, DateTimeOffset? Ends)
{
    /// <summary>What may be shown of it.</summary>
    public string Hint => Signer.SecretPrefix + "…" + Text[^4..];

    public bool IsLive(DateTimeOffset now) => Ends is null || Ends > now;
}

/// <summary>The secrets of an endpoint, oldest first, and how they are stored: as JSON, encrypted.</summary>
internal static class EndpointSecrets
{
    /// <summary>Most that sign at a time.</summary>
    public const int Most = 5;

    public static byte[] Seal(this Secrets secrets, IReadOnlyList<EndpointSecret> list) =>
        secrets.Encrypt(JsonSerializer.SerializeToUtf8Bytes(list));

    public static IReadOnlyList<EndpointSecret> Unseal(this Secrets secrets, byte[] stored) =>
        JsonSerializer.Deserialize<EndpointSecret[]>(secrets.Decrypt(stored)) ?? [];

    public static IReadOnlyList<EndpointSecret> Live(this IReadOnlyList<EndpointSecret> list, DateTimeOffset now) =>
        [.. list.Where(secret => secret.IsLive(now))];

    /// <summary>The live ones ending after the overlap at the latest, and a new one behind them.</summary>
    public static IReadOnlyList<EndpointSecret> Rotated(
        this IReadOnlyList<EndpointSecret> list, string text, DateTimeOffset now, TimeSpan overlap)
    {
        var ends = now + overlap;
        var kept = list.Live(now)
            .Select(secret => secret.Ends < ends ? secret : secret with { Ends = ends })
            .Where(secret => secret.IsLive(now))
            .TakeLast(Most - 1);
        return [.. kept, new EndpointSecret(text, now, null)];
    }
}
