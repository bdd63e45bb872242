using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Events;

/// <summary>
/// What is told when a job ends: the job's own event and, when it was the last open line, the order's. Called inside
/// the transaction that ends the job, after its position was taken; from there on the ends of this shop's jobs are
/// one after the other, so that of two last lines exactly one sees the other ended.
/// </summary>
internal sealed class JobEvents(AppDb db, EventLog log, OrderRollUp orders, JobJson json)
{
    private static readonly int[] ReasonsTried = [20, 10, 5, 0];

    /// <returns>Deliveries that are due at once.</returns>
    public async Task<IReadOnlyList<string>> Ended(JobRow job, CancellationToken cancel)
    {
        var own = await log.Append(
            new NewEvent(job.Shop, job.Status == JobStatus.Finished ? EventTypes.JobFinished : EventTypes.JobFailed, job.Position, job.Changed, Data(job))
            {
                Job = job.Id,
                Drop = job.DropId,
            },
            cancel);
        if (await orders.FinishedBy(job, cancel) is not { } order)
            return own;

        var position = await db.Next(job.Shop, Counters.Position, cancel);
        var revision = await db.Next(job.Shop, Counters.Order(job.OrderNumber), cancel);
        var whole = await log.Append(
            new NewEvent(job.Shop, EventTypes.OrderFinished, position, job.Changed, orders.Data(order, revision)) { Job = job.Id },
            cancel);
        return [.. own, .. whole];
    }

    // Twenty reasons fit with room to spare unless their sentences are unusually long.
    private byte[] Data(JobRow job)
    {
        foreach (var reasons in ReasonsTried)
        {
            var data = Json.Bytes(writer => json.WriteEvent(writer, job, reasons));
            if (data.Length <= EventLog.MostBytes - 500 || reasons == 0)
                return data;
        }

        throw new InvalidOperationException("The last try returns.");
    }
}
