using Hangfire.Common;
using Hangfire.Server;
using Hangfire.States;

namespace CapPrep.Service.Bench;

/// <summary>
/// The only filter of this host's jobs. The global ones would retry ten times, but our rows carry the attempts; and
/// what a job throws would stand in the executor's own records only, and there for good, so it is logged here and
/// forgotten as soon as one that succeeded.
/// </summary>
internal sealed partial class FaultFilter(ILogger<FaultFilter> log) : IJobFilterProvider, IServerFilter, IElectStateFilter
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

    public void OnStateElection(ElectStateContext context)
    {
        if (context.CandidateState is FailedState failed)
            context.CandidateState = new FailedForAWhile(failed);
    }

    [LoggerMessage(1, LogLevel.Error, "{Work} of {Id} threw; it is tried again")]
    private static partial void Threw(ILogger log, Exception fault, string work, object? id);

    /// <summary>Shown like any failed state, but final, so that the storage lets go of it.</summary>
    private sealed class FailedForAWhile(FailedState failed) : IState
    {
        public string Name => FailedState.StateName;

        public string Reason => failed.Reason;

        public bool IsFinal => true;

        public bool IgnoreJobLoadException => false;

        public Dictionary<string, string> SerializeData() => failed.SerializeData();
    }
}
