using System.IO.Compression;
using System.Security.Cryptography;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>The words for the documents of a job.</summary>
internal static class DocumentKinds
{
    public const string TapeReceived = "tape.received";
    public const string TapeSew = "tape.sew";
    public const string TapeProposed = "tape.proposed";

    /// <summary>A sewn tape that was approved; kept with the decision, and with each job it binds.</summary>
    public const string TapeApproved = "tape.approved";

    public const string Result = "result";
    public const string CardSheet = "sheet.card";
    public const string ProofSheet = "sheet.proof";
    public const string CardPdf = "card.pdf";
    public const string CardPng = "card.png";
    public const string CardSvg = "card.svg";
    public const string ProofPdf = "proof.pdf";
    public const string ProofPng = "proof.png";
    public const string ProofSvg = "proof.svg";
}

/// <summary>A document with its plain bytes.</summary>
internal sealed record Document(string Sha256, string ContentType, byte[] Bytes);

/// <summary>
/// Documents under their own hash, so that a repeated tape costs nothing. Everything but PDF and PNG, which are
/// compressed already, is stored deflated.
/// </summary>
internal sealed class DocumentStore(AppDb db)
{
    private const string Deflate = "deflate";
    private const string Identity = "identity";

    public static string Sha(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>
    /// Adds the document to the caller's transaction, and the job's claim on it. Two jobs that add the same bytes
    /// at once are both right: the second insert does nothing.
    /// </summary>
    public async Task Add(
        string shop, string job, string kind, string contentType, byte[] bytes, DateTimeOffset? expires, CancellationToken cancel)
    {
        var sha = Sha(bytes);
        var packed = contentType is "application/pdf" or "image/png";
        var stored = packed ? bytes : Deflated(bytes);
        var encoding = packed ? Identity : Deflate;
        await db.ShareDocuments(cancel);
        await db.Database.ExecuteSqlAsync(
            $"""
             INSERT INTO documents (sha256, content_type, encoding, length, bytes)
             VALUES ({sha}, {contentType}, {encoding}, {(long)bytes.Length}, {stored})
             ON CONFLICT (sha256) DO NOTHING
             """, cancel);
        db.JobDocuments.Add(new JobDocumentRow { Shop = shop, Job = job, Kind = kind, Sha256 = sha, Expires = expires });
    }

    /// <summary>
    /// Gives a job a document that another owner has, in the caller's transaction; false when it has none of that kind.
    /// </summary>
    public async Task<bool> Share(string shop, string owner, string job, string kind, DateTimeOffset? expires, CancellationToken cancel)
    {
        await db.ShareDocuments(cancel);
        var sha = await db.JobDocuments.Where(link => link.Job == owner && link.Kind == kind).Select(link => link.Sha256).FirstOrDefaultAsync(cancel);
        if (sha is null)
            return false;
        db.JobDocuments.Add(new JobDocumentRow { Shop = shop, Job = job, Kind = kind, Sha256 = sha, Expires = expires });
        return true;
    }

    /// <summary>The document of a job, or null when it has none of that kind (any more).</summary>
    public async Task<Document?> Find(string job, string kind, CancellationToken cancel)
    {
        var row = await db.JobDocuments
            .Where(link => link.Job == job && link.Kind == kind)
            .Join(db.Documents, link => link.Sha256, document => document.Sha256, (_, document) => document)
            .AsNoTracking()
            .FirstOrDefaultAsync(cancel);
        return row is null
            ? null
            : new Document(row.Sha256, row.ContentType, row.Encoding == Deflate ? Inflated(row.Bytes) : row.Bytes);
    }

    /// <summary>
    /// Takes all documents of a job away, and their bytes where no other job has them; inside the caller's transaction.
    /// </summary>
    public async Task Erase(string job, CancellationToken cancel)
    {
        await db.OwnDocuments(cancel);
        var links = db.JobDocuments.Where(link => link.Job == job);
        var shas = await links.Select(link => link.Sha256).ToArrayAsync(cancel);
        await links.ExecuteDeleteAsync(cancel);
        await EraseUnused(shas, cancel);
    }

    /// <summary>
    /// Takes the documents of a job away that are past their time, inside the caller's transaction; gives their number.
    /// </summary>
    public async Task<int> EraseExpired(string job, DateTimeOffset now, CancellationToken cancel)
    {
        await db.OwnDocuments(cancel);
        var links = db.JobDocuments.Where(link => link.Job == job && link.Expires != null && link.Expires <= now);
        var shas = await links.Select(link => link.Sha256).ToArrayAsync(cancel);
        await links.ExecuteDeleteAsync(cancel);
        await EraseUnused(shas, cancel);
        return shas.Length;
    }

    // Other shops' jobs count too: the bytes have no shop.
    private Task EraseUnused(string[] shas, CancellationToken cancel) => db.Documents
        .Where(document => shas.Contains(document.Sha256)
            && !db.JobDocuments.IgnoreQueryFilters().Any(link => link.Sha256 == document.Sha256))
        .ExecuteDeleteAsync(cancel);

    private static byte[] Deflated(byte[] bytes)
    {
        using var buffer = new MemoryStream();
        using (var deflate = new DeflateStream(buffer, CompressionLevel.Fastest, leaveOpen: true))
            deflate.Write(bytes);
        return buffer.ToArray();
    }

    private static byte[] Inflated(byte[] bytes)
    {
        using var inflate = new DeflateStream(new MemoryStream(bytes), CompressionMode.Decompress);
        using var buffer = new MemoryStream();
        inflate.CopyTo(buffer);
        return buffer.ToArray();
    }
}
