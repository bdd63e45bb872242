namespace CapPrep.Service.Events;

/// <summary>Brings one owed delivery to its target, whatever kind of target it is.</summary>
internal interface IDeliverer
{
    /// <summary>Claims the delivery and makes one attempt; does nothing when somebody else has it or it is not due.</summary>
    Task Deliver(string deliveryId, CancellationToken cancel);
}

/// <summary>Brings deliveries to one kind of target; implemented by the slice that owns the kind.</summary>
internal interface ITargetDeliverer : IDeliverer
{
    /// <summary>What the ids of its targets begin with.</summary>
    string TargetPrefix { get; }
}
