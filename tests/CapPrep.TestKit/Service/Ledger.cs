using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace CapPrep.TestKit.Service;

/// <summary>
/// What a receiver has to show for itself: every id it saw, how often, and that each id always had the same body.
/// </summary>
public sealed class Ledger
{
    private readonly ConcurrentDictionary<string, Entry> _entries = new(StringComparer.Ordinal);

    /// <summary>Ids seen, sorted.</summary>
    public IReadOnlyList<string> Ids => [.. _entries.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Ids that came with more than one body; there must be none.</summary>
    public IReadOnlyList<string> Contradicted =>
        [.. _entries.Where(entry => entry.Value.Bodies.Count > 1).Select(entry => entry.Key).Order(StringComparer.Ordinal)];

    public int TimesSeen(string id) => _entries.TryGetValue(id, out var entry) ? entry.Times : 0;

    public void Note(string id, ReadOnlySpan<byte> body)
    {
        var sha = Convert.ToHexStringLower(SHA256.HashData(body));
        _entries.AddOrUpdate(id, _ => new Entry(1, [sha]), (_, entry) => new Entry(entry.Times + 1, [.. entry.Bodies.Union([sha])]));
    }

    /// <summary>Fails unless exactly these ids were seen, each at least once and always with one body.</summary>
    public void ShouldHold(IEnumerable<string> owed)
    {
        var wanted = owed.Order(StringComparer.Ordinal).ToArray();
        var missing = wanted.Except(Ids).ToArray();
        var foreign = Ids.Except(wanted).ToArray();
        if (missing.Length + foreign.Length + Contradicted.Count > 0)
        {
            throw new InvalidOperationException(
                $"Missing: {string.Join(", ", missing)}. Never owed: {string.Join(", ", foreign)}. With two bodies: {string.Join(", ", Contradicted)}.");
        }
    }

    private sealed record Entry(int Times, IReadOnlyList<string> Bodies);
}
