namespace CapPrep.Service.Events;

/// <summary>Brings one owed delivery to its target; implemented by the slice that owns the kind of target.</summary>
internal interface IDeliverer
{
    /// <summary>Claims the delivery and makes one attempt; does nothing when somebody else has it or it is not due.</summary>
    Task Deliver(string deliveryId, CancellationToken cancel);
}
