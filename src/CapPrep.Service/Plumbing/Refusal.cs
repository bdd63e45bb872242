using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;

namespace CapPrep.Service.Plumbing;

/// <summary>A request that is turned away: which problem, what is wrong in this case, and every fault found.</summary>
/// <param name="Detail">One sentence for this case; never a path, type name or stack.</param>
internal sealed record Refusal(Problem Problem, string Detail) : IResult
{
    /// <summary>Most violations that are listed; the rest is counted.</summary>
    public const int MostListed = 100;

    public IReadOnlyList<Violation> Violations { get; init; } = [];

    /// <summary>Seconds for the Retry-After header; null: none.</summary>
    public int? RetryAfterSeconds { get; init; }

    /// <summary>A detail that counts the faults of a part and names the first places.</summary>
    /// <param name="part">In a sentence: "ticket", "query".</param>
    public static string Counted(IReadOnlyList<Violation> violations, string part)
    {
        const int Named = 3;
        var places = violations.Select(violation => violation.Pointer is { Length: > 0 } pointer ? pointer
            : violation.ByteOffset is { } offset ? string.Create(CultureInfo.InvariantCulture, $"byte {offset}")
            : violation.Part).Distinct().ToArray();
        var more = places.Length > Named ? string.Create(CultureInfo.InvariantCulture, $" and {places.Length - Named} more") : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{violations.Count} {(violations.Count == 1 ? "fault" : "faults")} in the {part}: {string.Join(", ", places.Take(Named))}{more}.");
    }

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = Problem.Status;
        response.ContentType = "application/problem+json";
        if (Problem.Status == StatusCodes.Status401Unauthorized)
            response.Headers.WWWAuthenticate = "Bearer";
        if (RetryAfterSeconds is { } seconds)
            response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
        var traceId = Activity.Current?.TraceId.ToString() ?? httpContext.TraceIdentifier;
        return response.Body.WriteAsync(Body(httpContext.Request.Path, traceId), httpContext.RequestAborted).AsTask();
    }

    /// <summary>The problem document as bytes.</summary>
    /// <param name="instance">Path of the request; null outside HTTP.</param>
    /// <param name="traceId">Null outside HTTP.</param>
    public byte[] Body(string? instance = null, string? traceId = null)
    {
        var body = new JsonObject
        {
            ["type"] = "/docs/problems/" + Problem.Code,
            ["title"] = Problem.Title,
            ["status"] = Problem.Status,
            ["detail"] = Detail,
        };
        if (instance is not null)
            body["instance"] = instance;
        body["code"] = Problem.Code;
        if (traceId is not null)
            body["traceId"] = traceId;
        if (Violations.Count > 0)
            body["violations"] = new JsonArray([.. Violations.Take(MostListed).Select(Written)]);
        if (Violations.Count > MostListed)
            body["violationsLeftOut"] = Violations.Count - MostListed;
        return JsonSerializer.SerializeToUtf8Bytes(body, Json.Written);
    }

    private static JsonObject Written(Violation violation)
    {
        var item = new JsonObject { ["part"] = violation.Part };
        if (violation.Pointer is not null)
            item["pointer"] = violation.Pointer;
        if (violation.ByteOffset is not null)
            item["byteOffset"] = violation.ByteOffset;
        item["code"] = violation.Code;
        item["message"] = violation.Message;
        if (violation.Minimum is not null)
            item["minimum"] = violation.Minimum;
        if (violation.Maximum is not null)
            item["maximum"] = violation.Maximum;
        if (violation.Allowed.Count > 0)
            item["allowed"] = new JsonArray([.. violation.Allowed.Select(word => JsonValue.Create(word))]);
        return item;
    }
}
