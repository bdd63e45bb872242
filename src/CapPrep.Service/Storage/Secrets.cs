using System.Security.Cryptography;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Storage;

/// <summary>
/// Encrypts what must be readable again, such as webhook secrets: AES-256-GCM under the key in
/// <c>Secrets:KeyFile</c>. The result is nonce (12 bytes), tag (16 bytes), cipher text.
/// </summary>
internal sealed class Secrets(byte[] key)
{
    private const int KeyBytes = 32;
    private const int NonceBytes = 12;
    private const int TagBytes = 16;

    /// <summary>Reads the key file; with SQLite a missing one is made, readable by its owner only.</summary>
    public static Secrets Open(Settings settings)
    {
        var file = settings.SecretsKeyFile;
        if (!File.Exists(file) && settings.Database.Provider == DatabaseProvider.Sqlite)
            OwnerFile.Write(file, Convert.ToBase64String(RandomNumberGenerator.GetBytes(KeyBytes)));
        return new Secrets(Convert.FromBase64String(File.ReadAllText(file).Trim()));
    }

    public byte[] Encrypt(ReadOnlySpan<byte> plain)
    {
        var sealedBytes = new byte[NonceBytes + TagBytes + plain.Length];
        var nonce = sealedBytes.AsSpan(0, NonceBytes);
        RandomNumberGenerator.Fill(nonce);
        using var aes = new AesGcm(key, TagBytes);
        aes.Encrypt(nonce, plain, sealedBytes.AsSpan(NonceBytes + TagBytes), sealedBytes.AsSpan(NonceBytes, TagBytes));
        return sealedBytes;
    }

    /// <exception cref="CryptographicException">The bytes were made under another key, or changed.</exception>
    public byte[] Decrypt(ReadOnlySpan<byte> sealedBytes)
    {
        var plain = new byte[sealedBytes.Length - NonceBytes - TagBytes];
        using var aes = new AesGcm(key, TagBytes);
        aes.Decrypt(
            sealedBytes[..NonceBytes],
            sealedBytes[(NonceBytes + TagBytes)..],
            sealedBytes.Slice(NonceBytes, TagBytes),
            plain);
        return plain;
    }
}

/// <summary>Files that only their owner may read.</summary>
internal static class OwnerFile
{
    public static void Write(string path, string text)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var writer = new StreamWriter(path, new System.Text.UTF8Encoding(false), options);
        writer.Write(text);
    }
}
