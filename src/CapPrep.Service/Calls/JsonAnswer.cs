using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Calls;

/// <summary>An answer whose JSON was written by our own writer.</summary>
/// <param name="Body">UTF-8 bytes of one JSON document.</param>
internal sealed record JsonAnswer(byte[] Body, int Status = StatusCodes.Status200OK) : IResult
{
    /// <summary>Path for the Location header; null: none.</summary>
    public string? Location { get; init; }

    /// <summary>The answer holds something that is shown once and kept nowhere.</summary>
    public bool Once { get; init; }

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = Status;
        response.ContentType = Json.ContentType;
        response.ContentLength = Body.Length;
        if (Location is not null)
            response.Headers.Location = Location;
        if (Once)
            response.Headers.CacheControl = "no-store";
        return response.Body.WriteAsync(Body, httpContext.RequestAborted).AsTask();
    }
}
