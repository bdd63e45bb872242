using System.Text;

namespace CapPrep.Service.Webhooks;

/// <summary>The beginning of an answer's body, kept for people who look for what went wrong.</summary>
internal static class Excerpt
{
    /// <summary>Most that is read and kept, in bytes.</summary>
    public const int MaxBytes = 2048;

    /// <summary>
    /// Reads no further than <see cref="MaxBytes"/> and no longer than <paramref name="cancel"/> allows. Since the
    /// status says whether the event arrived, a body that drips or breaks off changes nothing but the excerpt.
    /// </summary>
    public static async Task<string> Read(HttpContent content, CancellationToken cancel)
    {
        var bytes = new byte[MaxBytes];
        var length = 0;
        try
        {
            await using var stream = await content.ReadAsStreamAsync(cancel);
            int read;
            while (length < MaxBytes && (read = await stream.ReadAsync(bytes.AsMemory(length), cancel)) > 0)
                length += read;
        }
        catch (Exception fault) when (fault is IOException or HttpRequestException or OperationCanceledException)
        {
            return Clean(bytes.AsSpan(0, length));
        }

        return Clean(bytes.AsSpan(0, length));
    }

    /// <summary>Text that every store takes: no control characters but line ends and tabs, at most 2 KiB of UTF-8.</summary>
    public static string Clean(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder(bytes.Length);
        var left = MaxBytes;
        foreach (var rune in Encoding.UTF8.GetString(bytes).EnumerateRunes())
        {
            var kept = Rune.IsControl(rune) && rune.Value is not ('\n' or '\r' or '\t') ? Rune.ReplacementChar : rune;
            if ((left -= kept.Utf8SequenceLength) < 0)
                break;
            text.Append(kept.ToString());
        }

        return text.ToString();
    }
}
