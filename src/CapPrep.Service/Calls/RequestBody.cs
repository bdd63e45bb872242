using System.Globalization;
using System.Security.Cryptography;
using CapPrep.Service.Plumbing;
using Microsoft.AspNetCore.Http.Features;

namespace CapPrep.Service.Calls;

/// <summary>A request's body in memory, or why it is not taken.</summary>
internal sealed record RequestBody(byte[] Bytes, Refusal? Refusal)
{
    private const int BlockBytes = 16 * 1024;
    private const string DigestHeader = "Content-Digest";
    private const string DigestStart = "sha-256=:";

    /// <summary>
    /// Reads a body of at most <paramref name="most"/> bytes; of a longer one nothing is kept. A
    /// <c>Content-Digest</c> by SHA-256 (RFC 9530) is compared.
    /// </summary>
    public static async Task<RequestBody> Read(HttpRequest request, long most, CancellationToken cancel)
    {
        AnswerLongBodies(request.HttpContext);
        if (Packed(request) is { } packed)
            return new RequestBody([], packed);
        if (request.ContentLength > most)
            return TooLarge(most);
        using var buffer = new MemoryStream((int)(request.ContentLength ?? 0));
        var block = new byte[BlockBytes];
        while (await request.Body.ReadAsync(block, cancel) is > 0 and var count)
        {
            if (buffer.Length + count > most)
                return TooLarge(most);
            buffer.Write(block, 0, count);
        }

        var bytes = buffer.ToArray();
        return new RequestBody(bytes, Changed(request, bytes));
    }

    /// <summary>
    /// The server's own limit closes the connection, and most clients then report a broken pipe and never see the
    /// answer. Without it the answer goes out at once and the rest of the body is thrown away for some seconds.
    /// </summary>
    private static void AnswerLongBodies(HttpContext context)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = null;
    }

    /// <summary>Reads a JSON body; another content type is refused.</summary>
    public static async Task<RequestBody> ReadJson(
        HttpRequest request, long most, CancellationToken cancel, string types = Json.ContentType) =>
        request.HasJsonContentType()
            ? await Read(request, most, cancel)
            : new RequestBody([], new Refusal(Problems.MediaTypeUnknown, $"This address reads {types}."));

    /// <summary>Bodies come as they are (RFC 9110, 8.4): a packed one would only look broken.</summary>
    private static Refusal? Packed(HttpRequest request) =>
        request.Headers.ContentEncoding.ToString() is { Length: > 0 } coding && !coding.Equals("identity", StringComparison.OrdinalIgnoreCase)
            ? new Refusal(Problems.MediaTypeUnknown, "A body with Content-Encoding is not read; send it unpacked.")
            : null;

    private static RequestBody TooLarge(long most) => new([], new Refusal(
        Problems.BodyTooLarge, string.Create(CultureInfo.InvariantCulture, $"A request to this address has at most {most} bytes.")));

    private static Refusal? Changed(HttpRequest request, byte[] bytes)
    {
        var given = request.Headers[DigestHeader].ToString();
        var at = given.IndexOf(DigestStart, StringComparison.OrdinalIgnoreCase);
        if (at < 0)
            return null;
        var wanted = $"{Convert.ToBase64String(SHA256.HashData(bytes))}:";
        return given.AsSpan(at + DigestStart.Length).StartsWith(wanted, StringComparison.Ordinal)
            ? null
            : new Refusal(Problems.DigestMismatch, $"The {bytes.Length.ToString(CultureInfo.InvariantCulture)} bytes that came have another SHA-256 than {DigestHeader} says.");
    }
}
