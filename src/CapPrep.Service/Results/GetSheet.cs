using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Reading;
using CapPrep.Service.Access;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;

namespace CapPrep.Service.Results;

/// <summary>
/// GET card and proof: the form by <c>?format=</c> first, else by Accept, else the usual one. A form that was not
/// drawn when the job ended is drawn from the stored sheet and kept.
/// </summary>
internal static class GetSheet
{
    private static readonly Kind Card = new("card", DocumentKinds.CardSheet, [Formats.Pdf, Formats.Png, Formats.Svg]);
    private static readonly Kind Proof = new("proof", DocumentKinds.ProofSheet, [Formats.Svg, Formats.Png, Formats.Pdf]);

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/jobs/{id}/card", (string id, HttpContext context, AppDb db, DocumentStore documents, DrawingTurn turn, CancellationToken cancel) =>
                Handle(Card, id, context, db, documents, turn, cancel))
            .WithName("getCard").Admits(Scopes.Read, Scopes.Submit, Scopes.Floor);
        routes.MapGet("/v1/jobs/{id}/proof", (string id, HttpContext context, AppDb db, DocumentStore documents, DrawingTurn turn, CancellationToken cancel) =>
                Handle(Proof, id, context, db, documents, turn, cancel))
            .WithName("getProof").Admits(Scopes.Read, Scopes.Submit);
    }

    private static async Task<IResult> Handle(
        Kind kind, string id, HttpContext context, AppDb db, DocumentStore documents, DrawingTurn turn, CancellationToken cancel)
    {
        if (Choose(kind, context.Request, out var refusal) is not { } format)
            return refusal!;
        context.Response.Headers.Vary = "Accept";
        var (job, unfinished) = await EndedJob.Find(db, id, cancel);
        if (job is null)
            return unfinished!;
        var name = $"{kind.Name}.{format.Name}";
        var document = await documents.Find(id, name, cancel)
            ?? await turn.Take(async () => await documents.Find(id, name, cancel) ?? await Draw(kind, job, format, name, db, documents, cancel), cancel);
        return document is null
            ? EndedJob.Expired(kind.Name)
            : new DocumentAnswer(document, $"{job.Number}-{name}", Attachment: false);
    }

    private static Format? Choose(Kind kind, HttpRequest request, out Refusal? refusal)
    {
        refusal = null;
        if (request.Query["format"] is [{ } asked, ..])
        {
            if (kind.Formats.FirstOrDefault(format => format.Name == asked) is { } named)
                return named;
            refusal = new Refusal(Problems.QueryInvalid, "Wrong in the query: format.")
            {
                Violations = [new Violation("query", ViolationCodes.BadFormat, $"A {kind.Name} has no format '{asked}'.") { Pointer = "format", Allowed = kind.Names }],
            };
            return null;
        }

        var accepted = Accepted(request);
        if (accepted.Count == 0)
            return kind.Formats[0];
        foreach (var range in accepted)
        {
            if (kind.Formats.FirstOrDefault(format => range.MatchesMediaType(format.ContentType)) is { } format)
                return format;
        }

        refusal = new Refusal(Problems.NotAcceptable, $"A {kind.Name} is given as {string.Join(", ", kind.Formats.Select(format => format.ContentType))}.");
        return null;
    }

    private static IReadOnlyList<MediaTypeHeaderValue> Accepted(HttpRequest request) =>
        MediaTypeHeaderValue.TryParseList(request.Headers.Accept, out var ranges)
            ? [.. ranges.Where(range => range.Quality != 0).OrderByDescending(range => range.Quality ?? 1)]
            : [];

    private static async Task<Document?> Draw(
        Kind kind, JobRow job, Format format, string name, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        if (await documents.Find(job.Id, kind.SheetKind, cancel) is not { } sheet)
            return null;
        var bytes = format.Draw(SheetFile.Read(sheet.Bytes));
        try
        {
            await using var transaction = await db.Database.BeginTransactionAsync(cancel);
            await db.ShareDocuments(cancel);
            var sheets = await db.JobDocuments.AsNoTracking().Where(link => link.Job == job.Id && link.Kind == kind.SheetKind).ToArrayAsync(cancel);
            if (sheets is not [var kept])
                return null;
            await documents.Add(job.Shop, job.Id, name, format.ContentType, bytes, kept.Expires, cancel);
            await db.SaveChangesAsync(cancel);
            await transaction.CommitAsync(cancel);
        }
        catch (DbUpdateException fault) when (Race.IsLost(fault))
        {
            // Somebody asked for the same form in the same moment and kept it.
        }

        return new Document(DocumentStore.Sha(bytes), format.ContentType, bytes);
    }

    private sealed record Kind(string Name, string SheetKind, IReadOnlyList<Format> Formats)
    {
        public IReadOnlyList<string> Names => [.. Formats.Select(format => format.Name).Order(StringComparer.Ordinal)];
    }
}
