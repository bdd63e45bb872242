using Hangfire.Common;
using Hangfire.Server;

namespace CapPrep.Service.Bench;

/// <summary>
/// The only filter of this host's jobs. The global ones would retry ten times, but our rows carry the attempts; and
/// what a job throws would stand in the executor's own records only, so it is logged here.
/// </summary>
internal sealed partial class FaultFilter(ILogger<FaultFilter> log) : IJobFilterProvider, IServerFilter
{
    public IEnumerable<JobFilter> GetFilters(Job job) => [new JobFilter(this, JobFilterScope.Global, null)];

    public void OnPerforming(PerformingContext context)
    {
    }

    public void OnPerformed(PerformedContext context)
    {
        if (context.Exception is not (null or OperationCanceledException))
            Threw(log, context.Exception, context.BackgroundJob.Job.Type.Name, context.BackgroundJob.Job.Args[0]);
    }

    [LoggerMessage(1, LogLevel.Error, "{Work} of {Id} threw; it is tried again")]
    private static partial void Threw(ILogger log, Exception fault, string work, object? id);
}
