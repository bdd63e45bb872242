using CapPrep.Engine.Trade;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The way a design comes into the service.</summary>
internal enum DemoDoor
{
    Http,
    Folder,
}

/// <summary>What became of the call that an answer owes the receiver.</summary>
internal enum CallState
{
    NotOwed,
    Verified,
    Forged,
    Missing,
}

/// <summary>One design on its way in.</summary>
/// <param name="Name">As the table prints it.</param>
/// <param name="Door">Where it goes in.</param>
/// <param name="Stem">Name of its files without extension.</param>
/// <param name="Tape">Bytes of the tape.</param>
/// <param name="Ticket">The ticket, JSON.</param>
/// <param name="Wanted">The verdict it must get.</param>
internal sealed record DemoOrder(string Name, DemoDoor Door, string Stem, byte[] Tape, string Ticket, string Wanted)
{
    /// <summary>The door as people say it.</summary>
    public string DoorWord => Door == DemoDoor.Http ? "http" : "folder";
}

/// <summary>What the service said to one design.</summary>
/// <param name="Order">The design.</param>
/// <param name="Verdict">The verdict; of a refusal, <c>refused</c> with its code.</param>
/// <param name="Reason">The most important finding, or what the refusal says.</param>
internal sealed record DemoAnswer(DemoOrder Order, string Verdict, string Reason)
{
    /// <summary>Findings by severity; empty for a refusal.</summary>
    public IReadOnlyDictionary<Severity, int> Findings { get; init; } = new Dictionary<Severity, int>();

    /// <summary>Address of the job; null when there is none.</summary>
    public string? Job { get; init; }

    /// <summary>Folder of its cards and proofs; null when there are none.</summary>
    public string? Papers { get; init; }

    /// <summary>What the receiver is owed a call about: a job's id or a drop's name; null: nothing.</summary>
    public string? CallOwed { get; init; }

    public CallState Webhook { get; init; }
}
