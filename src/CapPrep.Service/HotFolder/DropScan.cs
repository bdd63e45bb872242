namespace CapPrep.Service.HotFolder;

internal enum FileKind
{
    Tape,
    Ticket,
    Archive,

    /// <summary>A name that no half of a pair has.</summary>
    Other,
}

/// <summary>One thing that lies in the drop folder, looked at without opening it.</summary>
/// <param name="Plain">A file, and not a link, a folder or the like.</param>
internal sealed record FoundFile(string Name, FileKind Kind, bool Plain, long Length, DateTime Written)
{
    /// <summary>The name without its extension, by which halves find each other.</summary>
    public string Stem => Path.GetFileNameWithoutExtension(Name);
}

/// <summary>Looks at what lies in the drop folder. Nothing is opened and no link is followed.</summary>
internal static class DropScan
{
    private static readonly EnumerationOptions All = new() { AttributesToSkip = 0, IgnoreInaccessible = false };

    /// <summary>Endings that programs give to files which they are still writing.</summary>
    private static readonly string[] Unfinished = [".tmp", ".part", ".partial", ".filepart", ".crdownload", "~"];

    /// <summary>Everything but hidden and unfinished files, by name.</summary>
    public static IReadOnlyList<FoundFile> Look(string folder) =>
    [
        .. new DirectoryInfo(folder).EnumerateFileSystemInfos("*", All)
            .Where(entry => !IsUnfinished(entry.Name))
            .Select(Found)
            .OfType<FoundFile>()
            .OrderBy(file => file.Name, StringComparer.Ordinal),
    ];

    public static FileKind KindOf(string name) => Path.GetExtension(name).ToLowerInvariant() switch
    {
        ".dst" => FileKind.Tape,
        ".json" => FileKind.Ticket,
        ".zip" => FileKind.Archive,
        _ => FileKind.Other,
    };

    private static bool IsUnfinished(string name) =>
        name.StartsWith('.') || Unfinished.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>Null: gone meanwhile.</summary>
    private static FoundFile? Found(FileSystemInfo entry)
    {
        var attributes = entry.Attributes;
        if (attributes == (FileAttributes)(-1))
            return null;
        var plain = entry is FileInfo && (attributes & (FileAttributes.ReparsePoint | FileAttributes.Directory | FileAttributes.Device)) == 0;
        try
        {
            return new FoundFile(entry.Name, KindOf(entry.Name), plain, plain ? ((FileInfo)entry).Length : 0, entry.LastWriteTimeUtc);
        }
        catch (FileNotFoundException)
        {
            return null;
        }
    }
}
