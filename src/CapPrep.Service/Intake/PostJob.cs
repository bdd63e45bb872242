using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Intake;

/// <summary>POST /v1/jobs: takes a tape and a ticket, and answers when they are stored, or when the job has ended.</summary>
internal sealed class PostJob(
    IntakeDesk desk, Waiting waiting, JobView view, Links links, Settings settings, TimeProvider clock)
{
    private const string Path = "/v1/jobs";

    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapPost(Path, (HttpContext context, PostJob post, CancellationToken cancel) => post.Handle(context, cancel))
        .WithName("postJob").WithSummary("Sends a tape and its ticket to be prepared").WithTags("Jobs")
        .Admits(Scopes.Submit);

    private async Task<IResult> Handle(HttpContext context, CancellationToken cancel)
    {
        var (key, malformed) = Idempotency.Key(context.Request);
        if (malformed is not null)
            return malformed;
        var reading = await ParcelReader.Read(context.Request, settings.Uploads, cancel);
        if (reading.Parcel is not { } parcel)
            return reading.Refusal!;

        var submission = Submission(parcel, key);
        var waiter = waiting.Enter(context.Request, submission.JobId);
        try
        {
            var acceptance = await desk.Accept(submission, cancel);
            if (acceptance.JobId is not { } id)
                return Refused(context, acceptance.Refusal!);
            if (acceptance.Replayed)
                waiter = Replayed(context, waiter, id);
            return await Answer(waiter, id, cancel);
        }
        finally
        {
            waiter?.Dispose();
        }
    }

    private Submission Submission(Parcel parcel, string? key) => new()
    {
        JobId = Ids.New(Ids.Job, clock),
        Door = Door.Http,
        Ticket = parcel.Ticket,
        Tape = parcel.Tape,
        FileName = parcel.FileName,
        IdempotencyKey = key,
        Route = "POST " + Path,
    };

    private static Refusal Refused(HttpContext context, Refusal refusal)
    {
        context.Response.Headers.Remove("Preference-Applied");
        return refusal;
    }

    /// <summary>Whoever repeats a request waits for the job that was made the first time.</summary>
    private Waiter? Replayed(HttpContext context, Waiter? forNothing, string id)
    {
        forNothing?.Dispose();
        context.Response.Headers["Idempotency-Replayed"] = "true";
        return waiting.Enter(context.Request, id);
    }

    private async Task<IResult> Answer(Waiter? waiter, string id, CancellationToken cancel)
    {
        var job = await waiting.ForEnd(waiter, id, cancel);
        return job is null
            ? new Refusal(Problems.NotFound, $"The job '{id}' was erased.")
            : JobAnswer.Accepted(job, await view.Whole(job, cancel), links.Job(id));
    }
}
