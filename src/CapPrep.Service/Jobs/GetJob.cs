using System.Security.Cryptography;
using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Jobs;

/// <summary>GET /v1/jobs/{id}: one job, at once or when it has ended.</summary>
internal static class GetJob
{
    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet("/v1/jobs/{id}", Handle)
        .WithName("getJob")
        .Admits(Scopes.Submit, Scopes.Read);

    private static async Task<IResult> Handle(
        string id, HttpContext context, Waiting waiting, JobView view, CancellationToken cancel)
    {
        using var waiter = waiting.Enter(context.Request, id);
        var job = await waiting.ForEnd(waiter, id, cancel);
        return job is null ? NotFound(id) : new JobAnswer(StatusCodes.Status200OK, await view.Whole(job, cancel));
    }

    internal static Refusal NotFound(string id) => new(Problems.NotFound, $"There is no job '{id}'.");
}

/// <summary>
/// A job as the body of an answer, with a weak tag of its bytes: what it says of deliveries may change without the
/// job's own change.
/// </summary>
internal sealed record JobAnswer(int Status, byte[] Body) : IResult
{
    /// <summary>Address of the job; null: no such header.</summary>
    public string? Location { get; init; }

    /// <summary>The answer to an accepted job: 200 when it has ended, 202 while it has not.</summary>
    public static JobAnswer Accepted(JobRow job, byte[] body, string location) => new(
        job.Status is JobStatus.Finished or JobStatus.Failed ? StatusCodes.Status200OK : StatusCodes.Status202Accepted, body)
    {
        Location = location,
    };

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var tag = $"W/\"{Convert.ToHexStringLower(SHA256.HashData(Body))[..32]}\"";
        var response = httpContext.Response;
        response.Headers.ETag = tag;
        response.Headers.CacheControl = "private, no-cache";
        if (Location is not null)
            response.Headers.Location = Location;
        if (HttpMethods.IsGet(httpContext.Request.Method) && httpContext.Request.HasTag(tag))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        }

        response.StatusCode = Status;
        response.ContentType = Json.ContentType;
        return response.Body.WriteAsync(Body, httpContext.RequestAborted).AsTask();
    }
}

internal static class TagExtensions
{
    /// <summary>True when If-None-Match names this tag, compared weakly (RFC 9110, 13.1.2), or is a star.</summary>
    public static bool HasTag(this HttpRequest request, string tag)
    {
        static string Opaque(string text) => text.StartsWith("W/", StringComparison.Ordinal) ? text[2..] : text;
        return request.Headers.IfNoneMatch
            .SelectMany(line => (line ?? "").Split(',', StringSplitOptions.TrimEntries))
            .Any(given => given == "*" || Opaque(given) == Opaque(tag));
    }
}
