
namespace CapPrep.Service.Jobs;

/// <summary>
/// A piece of work that every worker process does over and over. The bench runs all registered loops; a test calls
/// <see cref="RunOnce"/> with a time of its own.
/// </summary>
internal interface ILoop
{
    string Name { get; }

    /// <summary>Time between the end of one round and the beginning of the next.</summary>
    TimeSpan Every { get; }

    /// <summary>One round. What it throws is logged with an id, and the next round comes all the same.</summary>
    Task RunOnce(DateTimeOffset now, CancellationToken cancel);
}
