using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace CapPrep.Service.Plumbing;

/// <summary>How the service writes JSON.</summary>
internal static class Json
{
    public const string ContentType = "application/json";

    /// <summary>Letters outside ASCII are written as they are; the bytes are UTF-8 and never put into HTML.</summary>
    public static readonly JsonSerializerOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static readonly JsonWriterOptions Writer = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A time as RFC 3339 UTC with milliseconds.</summary>
    public static string Time(DateTimeOffset time) =>
        time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    /// <summary>Writes one document with a writer of its own.</summary>
    public static byte[] Bytes(Action<Utf8JsonWriter> write)
    {
        var buffer = new System.Buffers.ArrayBufferWriter<byte>(1024);
        using (var writer = new Utf8JsonWriter(buffer, Writer))
            write(writer);
        return buffer.WrittenSpan.ToArray();
    }
}
