using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace CapPrep.Service.Access;

/// <summary>
/// The form of an API key: <c>cpk_</c>, 8 id characters, <c>_</c>, 32 random bytes as 43 base64url characters and
/// 6 check characters. The first part may be shown, the whole never again after it was made.
/// </summary>
internal static class KeyForm
{
    public const string Prefix = "cpk_";

    private const string IdLetters = "abcdefghjkmnpqrstuvwxyz0123456789";
    private const int IdLength = 8;
    private const int SecretLength = 43;
    private const int CheckLength = 6;
    private const int Length = 4 + IdLength + 1 + SecretLength + CheckLength;

    /// <summary>A new key from the operating system's random source.</summary>
    public static string New()
    {
        var id = RandomNumberGenerator.GetString(IdLetters, IdLength);
        var body = $"{Prefix}{id}_{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32))}";
        return body + Check(body);
    }

    /// <summary>True when length, letters and check characters fit; says nothing about whether the key is known.</summary>
    public static bool IsWellFormed(string key) =>
        key.Length == Length
        && key.StartsWith(Prefix, StringComparison.Ordinal)
        && key[Prefix.Length + IdLength] == '_'
        && Check(key[..^CheckLength]) == key[^CheckLength..];

    /// <summary>The part that lists and logs may show.</summary>
    public static string Start(string key) => key[..(Prefix.Length + IdLength)];

    /// <summary>What is stored: SHA-256 of the key, lower-case hex. The key has full entropy, so no slow hash is needed.</summary>
    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private static string Check(string body) =>
        Base64Url.EncodeToString(SHA256.HashData(Encoding.UTF8.GetBytes(body)))[..CheckLength];
}
