using System.Collections.Concurrent;

namespace CapPrep.Service.HotFolder;

/// <summary>The hot folders that this process keeps now, and what last hindered an answer there.</summary>
internal sealed class KeptRoots
{
    private readonly ConcurrentDictionary<string, string?> _roots = new(StringComparer.Ordinal);

    public bool Has(string root) => _roots.ContainsKey(root);

    public void Add(string root) => _roots.TryAdd(root, null);

    public void Remove(string root) => _roots.TryRemove(root, out _);

    /// <summary>Null: the last answer was written.</summary>
    public string? Trouble(string root) => _roots.GetValueOrDefault(root);

    /// <summary>Remembers how the last try went.</summary>
    public void Note(string root, string? trouble)
    {
        if (Has(root))
            _roots[root] = trouble;
    }
}
