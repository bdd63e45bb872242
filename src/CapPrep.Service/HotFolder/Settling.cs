namespace CapPrep.Service.HotFolder;

/// <summary>A file with how long it has been as it is.</summary>
/// <param name="Since">First look at which it had this size and this write time.</param>
/// <param name="Settled">Unchanged over two looks that are far enough apart.</param>
internal sealed record Sighting(FoundFile File, DateTimeOffset Since, bool Settled);

/// <summary>
/// Remembers what lay there at the looks before: a file that somebody still writes changes from look to look.
/// </summary>
/// <param name="quiet">How long a file must stay unchanged.</param>
internal sealed class Settling(TimeSpan quiet)
{
    private Dictionary<string, Sighting> _seen = new(StringComparer.Ordinal);

    public IReadOnlyList<Sighting> Look(IReadOnlyList<FoundFile> found, DateTimeOffset now)
    {
        Sighting[] sightings = [.. found.Select(file => Compare(file, now))];
        _seen = sightings.ToDictionary(sighting => sighting.File.Name, StringComparer.Ordinal);
        return sightings;
    }

    /// <summary>Another process had the folder meanwhile; what was seen before says nothing.</summary>
    public void Forget() => _seen.Clear();

    private Sighting Compare(FoundFile file, DateTimeOffset now) =>
        _seen.GetValueOrDefault(file.Name) is { } before && before.File == file
            ? before with { Settled = now - before.Since >= quiet }
            : new Sighting(file, now, false);
}
