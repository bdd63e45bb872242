using System.Globalization;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Results;

/// <summary>
/// A document as an answer: its hash is its tag and its digest. Everything from this address is data, never a
/// program, so a picture of ours cannot run in a browser.
/// </summary>
internal sealed record DocumentAnswer(Document Document, string FileName, bool Attachment) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var tag = $"\"{Document.Sha256}\"";
        response.Headers.ETag = tag;
        response.Headers["Content-Digest"] = $"sha-256=:{Convert.ToBase64String(Convert.FromHexString(Document.Sha256))}:";
        response.Headers.CacheControl = "private, no-cache";
        response.Headers.ContentDisposition = string.Create(
            CultureInfo.InvariantCulture, $"{(Attachment ? "attachment" : "inline")}; filename=\"{FileName}\"");
        if (httpContext.Request.HasTag(tag))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = Document.ContentType;
        response.ContentLength = Document.Bytes.Length;
        await response.Body.WriteAsync(Document.Bytes, httpContext.RequestAborted);
    }
}
