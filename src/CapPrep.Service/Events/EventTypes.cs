namespace CapPrep.Service.Events;

/// <summary>The types of events.</summary>
internal static class EventTypes
{
    public const string JobFinished = "job.finished";
    public const string JobFailed = "job.failed";
    public const string JobDecided = "job.decided";
    public const string OrderFinished = "order.finished";
    public const string DropReturned = "drop.returned";
    public const string EndpointWarning = "endpoint.warning";

    /// <summary>Sent to one endpoint on demand: it has no sequence and does not stand in the feed.</summary>
    public const string WebhookTest = "webhook.test";

    /// <summary>Everything that can be subscribed to, sorted.</summary>
    public static readonly IReadOnlyList<string> All =
        [DropReturned, EndpointWarning, JobDecided, JobFailed, JobFinished, OrderFinished];
}
