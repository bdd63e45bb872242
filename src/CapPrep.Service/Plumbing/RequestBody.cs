using System.Globalization;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.Features;

namespace CapPrep.Service.Plumbing;

/// <summary>A request's body in memory, or why it is not taken.</summary>
internal sealed record RequestBody(byte[] Bytes, Refusal? Refusal)
{
    private const string DigestHeader = "Content-Digest";
    private const string DigestStart = "sha-256=:";

    /// <summary>
    /// Reads a body of at most <paramref name="most"/> bytes; a longer one is turned away before it is read, or as
    /// soon as it passes the limit. A <c>Content-Digest</c> by SHA-256 (RFC 9530) is compared.
    /// </summary>
    public static async Task<RequestBody> Read(HttpRequest request, long most, CancellationToken cancel)
    {
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most;
        if (request.ContentLength > most)
            return TooLarge(most);
        using var buffer = new MemoryStream((int)(request.ContentLength ?? 0));
        try
        {
            await request.Body.CopyToAsync(buffer, cancel);
        }
        catch (BadHttpRequestException fault) when (fault.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return TooLarge(most);
        }

        var bytes = buffer.ToArray();
        return new RequestBody(bytes, Changed(request, bytes));
    }

    /// <summary>Reads a JSON body; another content type is refused.</summary>
    public static async Task<RequestBody> ReadJson(HttpRequest request, long most, CancellationToken cancel) =>
        request.HasJsonContentType()
            ? await Read(request, most, cancel)
            : new RequestBody([], new Refusal(Problems.MediaTypeUnknown, $"This address reads {Json.ContentType}."));

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
