namespace CapPrep.Service.Events;

/// <summary>The name under which this process holds leases; never the same twice.</summary>
internal sealed class Me
{
    public string Name { get; } = $"{Environment.MachineName}/{Environment.ProcessId}/{Guid.NewGuid():N}";
}
