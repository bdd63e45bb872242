using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using Hangfire;
using Hangfire.Common;
using Hangfire.States;

namespace CapPrep.Service.Bench;

/// <summary>Queues of the executor.</summary>
internal static class Queues
{
    public const string Prepare = "prepare";
    public const string Deliver = "deliver";
}

/// <summary>Makes Hangfire jobs that carry an id and nothing else.</summary>
internal sealed partial class Handover(IBackgroundJobClient client, ILogger<Handover> log) : IHandover
{
    public void Prepare(string jobId) =>
        Hand(Job.FromExpression<PrepareJob>(job => job.Run(jobId, CancellationToken.None)), Queues.Prepare, jobId);

    public void Deliver(string deliveryId) =>
        Hand(Job.FromExpression<IDeliverer>(deliverer => deliverer.Deliver(deliveryId, CancellationToken.None)), Queues.Deliver, deliveryId);

    private void Hand(Job job, string queue, string id)
    {
        try
        {
            client.Create(job, new EnqueuedState(queue));
        }
        catch (BackgroundJobClientException fault)
        {
            // The row is stored; the sweep hands it over again.
            NotHanded(log, fault, id);
        }
    }

    [LoggerMessage(1, LogLevel.Warning, "{Id} could not be handed over now; the sweep will do it")]
    private static partial void NotHanded(ILogger log, Exception fault, string id);
}
