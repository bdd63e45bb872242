using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CapPrep.Service.Webhooks;

/// <summary>Signs as Standard Webhooks 1.0.0 lays down: HMAC-SHA256 over id, seconds and body with full stops between.</summary>
internal static class Signer
{
    public const string SecretPrefix = "whsec_";

    private const int SecretBytes = 32;

    /// <summary>A new secret: <c>whsec_</c> and 32 random bytes in base64.</summary>
    public static string NewSecret() =>
        SecretPrefix + Convert.ToBase64String(RandomNumberGenerator.GetBytes(SecretBytes));

    /// <summary>The header <c>webhook-signature</c>: one signature per secret, a blank between.</summary>
    /// <param name="secrets">Live secrets, with their prefix.</param>
    public static string Sign(
        IEnumerable<string> secrets, string id, DateTimeOffset timestamp, ReadOnlySpan<byte> body)
    {
        var signed = Signed(id, timestamp, body);
        return string.Join(' ', secrets.Select(secret => "v1," + Convert.ToBase64String(Mac(KeyOf(secret), signed))));
    }

    /// <summary>HMAC-SHA256.</summary>
    public static byte[] Mac(byte[] key, byte[] signed) => HMACSHA256.HashData(key, signed);

    private static byte[] KeyOf(string secret) => Convert.FromBase64String(secret[SecretPrefix.Length..]);

    private static byte[] Signed(string id, DateTimeOffset timestamp, ReadOnlySpan<byte> body)
    {
        var head = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{id}.{timestamp.ToUnixTimeSeconds()}."));
        return [.. head, .. body];
    }
}
