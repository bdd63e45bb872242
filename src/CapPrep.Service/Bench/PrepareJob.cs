using System.Data.Common;
using System.Diagnostics;
using CapPrep.Engine;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>
/// Works one job. What a restart does from each checkpoint:
/// <list type="number">
/// <item>claimed: the lease runs out (with SQLite: is void at the start) and the job is claimed again;</item>
/// <item>prepared, drawn: the same, everything is worked out again and comes out the same;</item>
/// <item>result before commit: nothing was stored, as above;</item>
/// <item>result committed: the job has ended, its deliveries are owed.</item>
/// </list>
/// </summary>
internal sealed partial class PrepareJob(
    AppDb db,
    ShopScope scope,
    DocumentStore documents,
    PinnedSetup pinned,
    BoundWork bound,
    IPaperMaker papers,
    JobEnd end,
    IHandover handover,
    Worker worker,
    AloneGate gate,
    Settings settings,
    TimeProvider clock,
    ILogger<PrepareJob> log)
{
    private const string Kept = "The tape and the ticket are kept; ask for a recheck after an update.";

    /// <summary>Claims the job and works it; does nothing when somebody else has it or it has ended.</summary>
    public async Task Run(string jobId, CancellationToken cancel)
    {
        using var places = await gate.Enter(await IsSuspect(jobId, cancel), cancel);
        var lease = TimeSpan.FromSeconds(settings.Workers.LeaseSeconds);
        if (await db.ClaimJob(jobId, worker.Me, clock.GetUtcNow(), lease, cancel) is not { } claim)
            return;
        using var held = worker.Hold(claim.Id, claim.Fence);
        scope.Shop = claim.Shop;
        Checkpoints.Pass(Checkpoints.Claimed);
        var job = await db.Jobs.AsNoTracking().SingleAsync(row => row.Id == claim.Id, cancel);
        using var trace = Trace(job);
        if (job.Attempts > settings.Workers.MaxAttempts)
            await GiveUp(claim, job, "too-many-attempts", $"CapPrep ended {job.Attempts - 1} times while it worked this job. {Kept}", null, cancel);
        else
            await Work(claim, job, cancel);
    }

    private async Task Work(Claim claim, JobRow job, CancellationToken cancel)
    {
        var stage = "engine-fault";
        try
        {
            var request = await Request(job, cancel);
            var preparation = await InTime(() => CapPrepper.Prepare(request.Prepare), cancel);
            Checkpoints.Pass(Checkpoints.Prepared);
            stage = "drawing-fault";
            var shop = await pinned.Shop(job, cancel);
            var made = await InTime(() => papers.Make(new PreparedJob(job, preparation, request.TapeBytes, shop)), cancel);
            Checkpoints.Pass(Checkpoints.Drawn);
            await end.Finish(claim, preparation.Verdict, made, cancel);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            await PutBack(claim, counts: false, CancellationToken.None);
            throw;
        }
        catch (TimeoutException fault)
        {
            await GiveUp(claim, job, "time-limit", $"CapPrep did not finish this job in {settings.Workers.JobTimeoutSeconds} s. {Kept}", fault, cancel);
        }
        catch (Exception fault) when (fault is DbException or DbUpdateException)
        {
            // Not the job's fault: it waits for the next sweep, by when the database may be well again.
            Missed(log, fault, job.Id, job.Attempts);
            await PutBack(claim, counts: true, cancel);
        }
        catch (Exception fault) when (job.Attempts >= settings.Workers.MaxAttempts)
        {
            await GiveUp(claim, job, fault is EngineFaultException ? "loss-check-failed" : stage, $"CapPrep could not finish this job. {Kept}", fault, cancel);
        }
        catch (Exception fault)
        {
            Missed(log, fault, job.Id, job.Attempts);
            await PutBack(claim, counts: true, cancel);
            handover.Prepare(job.Id);
        }
    }

    private async Task<(PrepareRequest Prepare, int TapeBytes)> Request(JobRow job, CancellationToken cancel)
    {
        var ticket = ResolvedTicketReader.Read(job.TicketResolved);
        var setup = await pinned.Load(job, ticket, cancel);
        var file = await documents.Find(job.Id, DocumentKinds.TapeReceived, cancel)
            ?? throw new InvalidOperationException($"The tape of {job.Id} is gone.");
        var tape = TapeReader.Read(file.Bytes, new TapeReading { MaxRecords = settings.Uploads.MaxRecords, TrimJumps = setup.Machine.Tape.TrimCount });
        var prepare = new PrepareRequest
        {
            Tape = tape.Value ?? throw new InvalidOperationException($"The tape of {job.Id} could be read at acceptance and cannot now."),
            Ticket = ticket,
            Setup = setup,
            Label = job.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
        };
        return (await bound.AddTo(prepare, job, cancel), file.Bytes.Length);
    }

    /// <summary>The engine cannot be interrupted, but it is bounded; what it gives after the limit is thrown away.</summary>
    private Task<T> InTime<T>(Func<T> work, CancellationToken cancel) =>
        Task.Run(work, cancel).WaitAsync(TimeSpan.FromSeconds(settings.Workers.JobTimeoutSeconds), cancel);

    private async Task GiveUp(
        Claim claim, JobRow job, string code, string message, Exception? fault, CancellationToken cancel)
    {
        var errorId = Activity.Current?.TraceId.ToString() ?? Guid.CreateVersion7(clock.GetUtcNow()).ToString("N");
        GivenUp(log, fault, job.Id, code, errorId);
        await end.Fail(claim, new JobFailure(code, errorId, message), job.Attempts, cancel);
    }

    /// <param name="counts">False when the service stops: that is not the job's fault.</param>
    private Task<int> PutBack(Claim claim, bool counts, CancellationToken cancel) => db.Jobs
        .Where(job => job.Id == claim.Id && job.Fence == claim.Fence && job.Status == JobStatus.Working)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(job => job.Status, JobStatus.Queued)
                .SetProperty(job => job.Attempts, job => counts ? job.Attempts : job.Attempts - 1)
                .SetProperty(job => job.HandedAt, (DateTimeOffset?)null)
                .SetProperty(job => job.LeaseHolder, (string?)null)
                .SetProperty(job => job.LeaseUntil, (DateTimeOffset?)null),
            cancel);

    private Task<bool> IsSuspect(string jobId, CancellationToken cancel) =>
        db.Jobs.IgnoreQueryFilters().AnyAsync(job => job.Id == jobId && job.Suspect, cancel);

    /// <summary>The work belongs to the trace of the request that brought the job.</summary>
    private static Activity Trace(JobRow job)
    {
        var activity = new Activity("prepare");
        if (job.Traceparent is not null)
            activity.SetParentId(job.Traceparent);
        return activity.Start();
    }

    [LoggerMessage(1, LogLevel.Warning, "Job {JobId} missed at attempt {Attempt}")]
    private static partial void Missed(ILogger log, Exception fault, string jobId, int attempt);

    [LoggerMessage(2, LogLevel.Error, "Job {JobId} given up as {Code}, error {ErrorId}")]
    private static partial void GivenUp(ILogger log, Exception? fault, string jobId, string code, string errorId);
}
