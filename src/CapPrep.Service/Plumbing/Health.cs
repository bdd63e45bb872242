using System.Text.Json;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Plumbing;

/// <summary>
/// Whether this process can do its work. Live asks nothing of anything else; ready asks the database and the disk,
/// and says in words what is wrong.
/// </summary>
internal sealed class Health(AppDb db, Settings settings, TimeProvider clock)
{
    private const long LeastFreeBytes = 256L * 1024 * 1024;

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => TypedResults.Json(new { status = "live" }, Json.Written))
            .WithName("getLive").WithTags("Health").WithSummary("Says that the process runs.");
        routes.MapGet("/health/ready", (Health health, CancellationToken cancel) => health.Ready(cancel))
            .WithName("getReady").WithTags("Health").WithSummary("Says whether the service can do its work, and if not, why.");
    }

    private async Task<IResult> Ready(CancellationToken cancel)
    {
        var trouble = new List<string>();
        var oldest = await OldestWaiting(trouble, cancel);
        if (FreeBytes() is { } free && free < LeastFreeBytes)
            trouble.Add($"Less than {LeastFreeBytes / (1024 * 1024)} MB are free in the data folder.");
        var body = Json.Bytes(writer => Write(writer, trouble, oldest));
        var status = trouble.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        return new HealthAnswer(body, status);
    }

    private async Task<DateTimeOffset?> OldestWaiting(List<string> trouble, CancellationToken cancel)
    {
        try
        {
            return await db.Jobs.Where(job => job.Status == JobStatus.Queued)
                .OrderBy(job => job.QueuedAt).Select(job => (DateTimeOffset?)job.QueuedAt).FirstOrDefaultAsync(cancel);
        }
        catch (Exception fault) when (fault is System.Data.Common.DbException or InvalidOperationException)
        {
            trouble.Add("The database does not answer.");
            return null;
        }
    }

    private long? FreeBytes()
    {
        try
        {
            return new DriveInfo(settings.DataFolder).AvailableFreeSpace;
        }
        catch (IOException)
        {
            return null;
        }
    }

    private void Write(Utf8JsonWriter writer, List<string> trouble, DateTimeOffset? oldest)
    {
        writer.WriteStartObject();
        writer.WriteString("status", trouble.Count == 0 ? "ready" : "notReady");
        writer.WriteStartArray("roles");
        foreach (var role in settings.Roles)
            writer.WriteStringValue(role.ToString().ToLowerInvariant());
        writer.WriteEndArray();
        if (oldest is { } since)
            writer.WriteNumber("oldestWaitingSeconds", Math.Max(0, Math.Round((clock.GetUtcNow() - since).TotalSeconds)));
        writer.WriteStartArray("trouble");
        foreach (var line in trouble)
            writer.WriteStringValue(line);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private sealed class HealthAnswer(byte[] body, int status) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = status;
            httpContext.Response.ContentType = Json.ContentType;
            return httpContext.Response.Body.WriteAsync(body, httpContext.RequestAborted).AsTask();
        }
    }
}
