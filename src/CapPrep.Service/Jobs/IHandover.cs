namespace CapPrep.Service.Jobs;

/// <summary>
/// Hands ids to the executor after the commit that made them. A hint only: the tables are the truth, and the sweep
/// hands over what was lost here.
/// </summary>
internal interface IHandover
{
    /// <summary>A job waits to be prepared.</summary>
    void Prepare(string jobId);

    /// <summary>A delivery is due now.</summary>
    void Deliver(string deliveryId);
}
