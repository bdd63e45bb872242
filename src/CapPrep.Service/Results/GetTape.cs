using CapPrep.Engine.Reading;
using CapPrep.Service.Access;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Results;

/// <summary>
/// GET /v1/jobs/{id}/tape: the tape to sew, and only with <c>?version=</c> another. After a return verdict there is
/// none to sew: what lies at hand gets loaded.
/// </summary>
internal static class GetTape
{
    private const string Sew = "sew";
    private const string Received = "received";
    private const string Proposed = "proposed";

    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet("/v1/jobs/{id}/tape", Handle)
        .WithName("getTape")
        .Admits(Scopes.Read, Scopes.Submit, Scopes.Floor);

    private static async Task<IResult> Handle(
        string id, HttpContext context, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        var version = context.Request.Query["version"] is [{ } asked, ..] ? asked : Sew;
        return version switch
        {
            Sew => await ToSew(id, db, documents, cancel),
            Received => await AsReceived(id, db, documents, cancel),
            Proposed => await AsProposed(id, db, documents, cancel),
            _ => UnknownVersion(version),
        };
    }

    private static async Task<IResult> ToSew(string id, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        var (job, refusal) = await EndedJob.Find(db, id, cancel);
        if (job is null)
            return refusal!;
        if (await documents.Find(id, DocumentKinds.TapeSew, cancel) is { } document)
            return new DocumentAnswer(document, job.TapeName, Attachment: true);
        return job.Verdict!.StartsWith("sew", StringComparison.Ordinal)
            ? EndedJob.Expired("tape")
            : new Refusal(Problems.NoTapeToSew, $"The verdict of job {job.Number} is {job.Verdict}.");
    }

    private static async Task<IResult> AsReceived(string id, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel);
        if (job is null)
            return new Refusal(Problems.NotFound, $"There is no job '{id}'.");
        return await documents.Find(id, DocumentKinds.TapeReceived, cancel) is { } document
            ? new DocumentAnswer(document, $"{job.Number}-received.DST", Attachment: true)
            : EndedJob.Expired("received tape");
    }

    private static async Task<IResult> AsProposed(string id, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        var (job, refusal) = await EndedJob.Find(db, id, cancel);
        if (job is null)
            return refusal!;
        return await documents.Find(id, DocumentKinds.TapeProposed, cancel) is { } document
            ? new DocumentAnswer(document, $"{job.Number}-proposed.DST", Attachment: true)
            : new Refusal(Problems.NotFound, $"No other order was proposed for job {job.Number}.");
    }

    private static Refusal UnknownVersion(string version) => new(Problems.QueryInvalid, "Wrong in the query: version.")
    {
        Violations =
        [
            new Violation("query", ViolationCodes.BadFormat, $"A tape has no version '{version}'.")
            {
                Pointer = "version",
                Allowed = [Proposed, Received, Sew],
            },
        ],
    };
}
