using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>
/// POST /v1/jobs/{id}/decision: what a person says of a finished job. The job stays as it is; the next check of these
/// stitches knows it.
/// </summary>
internal sealed class PostDecision(AppDb db, DocumentStore documents, DecisionEntry entry, Links links)
{
    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/jobs/{id}/decision", (string id, HttpContext context, PostDecision post, CancellationToken cancel) => post.Handle(id, context, cancel))
        .WithName("postDecision")
        .Admits(Scopes.Manage);

    private async Task<IResult> Handle(string id, HttpContext context, CancellationToken cancel)
    {
        var (key, malformed) = Idempotency.Key(context.Request);
        if (malformed is not null)
            return malformed;
        var (bytes, unread) = await SmallBody.Read(context.Request, cancel);
        if (unread is not null)
            return unread;
        var (row, none) = await EndedJob.Find(db, id, cancel);
        if (row is null)
            return none!;
        var reading = DecisionBody.Read(bytes);
        if (!reading.Succeeded)
            return SmallBody.Refuse(reading.Violations, Problems.DecisionInvalid);
        return await Decide(row, reading.Value, key, context, cancel);
    }

    private async Task<IResult> Decide(JobRow row, DecisionBody body, string? key, HttpContext context, CancellationToken cancel)
    {
        var request = key is null ? null : new IdempotencyRow
        {
            Shop = row.Shop,
            Key = key,
            Print = body.Print(row.Shop, row.Id),
            Job = row.Id,
            Route = "POST /v1/jobs/{id}/decision",
        };
        if (await entry.Earlier(request, cancel) is { } earlier)
            return Answer(context, row, earlier);
        var (job, expired) = await Load(row, body, cancel);
        if (job is null)
            return expired!;
        using (job)
        {
            var faults = DecisionCheck.Faults(body, job);
            if (faults.Count > 0)
                return SmallBody.Refuse(faults, Problems.DecisionInvalid);
            return Answer(context, row, await entry.Store(job, body, request, context.Caller().KeyId, cancel));
        }
    }

    private async Task<(DecidedJob? Job, Refusal? Refusal)> Load(JobRow row, DecisionBody body, CancellationToken cancel)
    {
        if (await documents.Find(row.Id, DocumentKinds.Result, cancel) is not { } result)
            return (null, EndedJob.Expired("result"));
        var sewn = await documents.Find(row.Id, DocumentKinds.TapeSew, cancel);
        var job = new DecidedJob(row, StoredResult.Read(result.Bytes), sewn?.Bytes);
        if (body.Decision != DecisionWord.ApproveSample || !job.IsSewn || sewn is not null)
            return (job, null);
        job.Dispose();
        return (null, EndedJob.Expired("tape"));
    }

    private IResult Answer(HttpContext context, JobRow row, Decided decided)
    {
        if (decided.KeyIsTaken)
            return new Refusal(Problems.IdempotencyKeyReused, $"This {Idempotency.Header} came before with another request.");
        if (decided.Points.Count == 0)
            return new Refusal(Problems.NotFound, $"The job '{row.Id}' was erased.");
        if (decided.Replayed)
            context.Response.Headers["Idempotency-Replayed"] = "true";
        return new JsonAnswer(Json.Bytes(writer => DecisionJson.Write(writer, decided.Points)), StatusCodes.Status201Created)
        {
            Location = links.Job(row.Id),
        };
    }
}
