using CapPrep.Service.Plumbing;

namespace CapPrep.Service.HotFolder;

/// <summary>Files that are taken together.</summary>
/// <param name="Name">Their common name, without extension.</param>
/// <param name="Files">The tape, or the archive, first: whoever has renamed it has claimed the drop.</param>
/// <param name="Refusal">They are taken only to be returned; null: they are a pair.</param>
internal sealed record Parcel(string Name, IReadOnlyList<FoundFile> Files, Refusal? Refusal);

/// <summary>A file that stays where it is for now.</summary>
/// <param name="For">What it waits for, as a part of a sentence.</param>
/// <param name="ReturnedAt">When the patience ends; null: as long as it changes.</param>
internal sealed record WaitingFile(string Name, DateTimeOffset Since, string For, DateTimeOffset? ReturnedAt);

/// <summary>What one look at the drop folder comes to.</summary>
internal sealed record Sorted(IReadOnlyList<Parcel> Parcels, IReadOnlyList<WaitingFile> Waiting, IReadOnlyList<string> Trouble);

/// <summary>
/// Finds what belongs together: NAME.dst with NAME.json, or NAME.zip, letters' case aside. Anything else waits, or is
/// returned: half a pair when its patience ends, twins at once.
/// </summary>
internal sealed class Pairing(TimeSpan patience)
{
    public Sorted Sort(IReadOnlyList<Sighting> sightings, DateTimeOffset now)
    {
        var parcels = new List<Parcel>();
        var waiting = new List<WaitingFile>();
        foreach (var group in sightings.Where(sighting => sighting.File.Plain).GroupBy(Key).Select(group => group.ToArray()))
        {
            if (Decide(group, Odd(sightings, group), now) is { } parcel)
                parcels.Add(parcel);
            else
                waiting.AddRange(group.Select(sighting => Waiting(sighting, group)));
        }

        return new Sorted(parcels, waiting, [.. sightings.Where(sighting => !sighting.File.Plain).Select(sighting => Trouble(sighting.File))]);
    }

    // What is no half of a pair stands alone, so that notes.txt does not trouble notes.dst.
    private static string Key(Sighting sighting) => sighting.File.Kind == FileKind.Other
        ? "/" + sighting.File.Name
        : sighting.File.Stem.ToUpperInvariant();

    /// <summary>Links and folders that go by the name of the group.</summary>
    private static FoundFile? Odd(IReadOnlyList<Sighting> sightings, Sighting[] group) => sightings
        .Where(sighting => !sighting.File.Plain && sighting.Settled && Key(sighting) == Key(group[0]) && sighting.File.Kind != FileKind.Other)
        .Select(sighting => sighting.File)
        .FirstOrDefault();

    private Parcel? Decide(Sighting[] group, FoundFile? odd, DateTimeOffset now)
    {
        if (!group.All(sighting => sighting.Settled))
            return null;
        FoundFile[] files = [.. group.Select(sighting => sighting.File).OrderBy(file => file.Kind is FileKind.Ticket or FileKind.Other).ThenBy(file => file.Name, StringComparer.Ordinal)];
        var isOver = now >= Until(group);
        var stem = files[0].Stem;
        if (odd is not null)
            return new Parcel(stem, files, DropRefusals.NotPlain(odd));
        if (HasTwins(files))
            return new Parcel(stem, files, DropRefusals.Twins(files));
        if (IsComplete(files))
            return isOver || files.All(file => file.Length > 0) ? new Parcel(stem, files, null) : null;
        return isOver ? new Parcel(stem, files, DropRefusals.Half(files[0], patience)) : null;
    }

    private DateTimeOffset Until(Sighting[] group) => group.Max(sighting => sighting.Since) + patience;

    private static bool IsComplete(FoundFile[] files) => files is [{ Kind: FileKind.Archive }]
        or [{ Kind: FileKind.Tape }, { Kind: FileKind.Ticket }];

    private static bool HasTwins(FoundFile[] files) => files.Length > 1 && !IsComplete(files);

    private WaitingFile Waiting(Sighting sighting, Sighting[] group)
    {
        var isChanging = !group.All(other => other.Settled);
        var (file, stem) = (sighting.File, sighting.File.Stem);
        var wanted = file switch
        {
            _ when isChanging => "its writer to be done",
            { Length: 0 } => "its content; it is empty",
            { Kind: FileKind.Tape } when group.Length == 1 => $"its ticket {stem}.json",
            { Kind: FileKind.Ticket } when group.Length == 1 => $"its tape {stem}.dst",
            { Kind: FileKind.Other } => "nothing; only .dst, .json and .zip are taken here",
            _ => "its other half, which is empty",
        };
        return new WaitingFile(file.Name, sighting.Since, wanted, isChanging ? null : Until(group));
    }

    private static string Trouble(FoundFile file) =>
        $"'{SafeName.Shown(file.Name)}' in drop is a link, a folder or a device; only plain files are taken. Take it away.";
}
