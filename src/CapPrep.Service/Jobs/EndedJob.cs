using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Jobs;

/// <summary>A job whose documents can be asked for.</summary>
internal static class EndedJob
{
    /// <summary>The finished job, or the refusal that says why there is none.</summary>
    public static async Task<(JobRow? Job, Refusal? Refusal)> Find(AppDb db, string id, CancellationToken cancel)
    {
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel);
        return job switch
        {
            null => (null, new Refusal(Problems.NotFound, $"There is no job '{id}'.")),
            { Status: JobStatus.Finished } => (job, null),
            { Status: JobStatus.Failed } => (null, new Refusal(Problems.JobFailed, $"Job {job.Number} failed.")),
            _ => (null, new Refusal(Problems.JobNotFinished, $"Job {job.Number} has not ended yet.") { RetryAfterSeconds = 1 }),
        };
    }

    public static Refusal Expired(string what) => new(Problems.DocumentExpired, $"The {what} of this job is past its retention.");
}
