using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Jobs;

/// <summary>
/// GET /v1/jobs: newest first, or in the order of change. Positions are handed out in commit order, so whoever keeps
/// the last cursor of the latter and asks again misses nothing.
/// </summary>
internal static class ListJobs
{
    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet("/v1/jobs", Handle)
        .WithName("listJobs")
        .Admits(Scopes.Submit, Scopes.Read);

    private static async Task<IResult> Handle(HttpContext context, AppDb db, JobView view, CancellationToken cancel)
    {
        var (filter, refusal) = JobFilter.Read(context.Request.Query);
        if (filter is null)
            return refusal!;

        var found = await Page(filter, filter.Apply(db.Jobs.AsNoTracking())).Take(filter.Limit + 1).ToListAsync(cancel);
        var more = found.Count > filter.Limit;
        var jobs = found.Take(filter.Limit).ToArray();
        var body = await view.Page(jobs, Cursor(filter, jobs, more)?.Write(), more, cancel);
        return TypedResults.Bytes(body, Json.ContentType);
    }

    private static IQueryable<JobRow> Page(JobFilter filter, IQueryable<JobRow> jobs)
    {
        if (!filter.ByChange)
        {
            return (filter.After is { } before ? jobs.Where(job => job.Number < before.Place) : jobs)
                .OrderByDescending(job => job.Number);
        }

        var after = filter.After ?? new JobCursor("", 0, "");
        return jobs
            .Where(job => job.Position > after.Place || (job.Position == after.Place && string.Compare(job.Id, after.Id) > 0))
            .OrderBy(job => job.Position)
            .ThenBy(job => job.Id);
    }

    private static JobCursor? Cursor(JobFilter filter, JobRow[] jobs, bool more)
    {
        if (!filter.ByChange)
            return more ? new JobCursor(filter.Print, jobs[^1].Number, "") : null;
        return jobs is [.., var last]
            ? new JobCursor(filter.Print, last.Position, last.Id)
            : filter.After ?? new JobCursor(filter.Print, 0, "");
    }
}
