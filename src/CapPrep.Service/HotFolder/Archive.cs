using System.IO.Compression;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Takes one tape and one ticket out of an archive. Nothing is written to the disk, sizes are counted on the bytes
/// that come out, not on what the archive says of itself, and an archive inside is not opened.
/// </summary>
internal static class Archive
{
    private const int MostEntries = 200;

    public static (Contents? Contents, Refusal? Refusal) Read(byte[] bytes, UploadSettings uploads)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes), ZipArchiveMode.Read);
            return Pair(archive.Entries, uploads);
        }
        catch (Exception fault) when (fault is InvalidDataException or NotSupportedException or EndOfStreamException or ArgumentException)
        {
            return (null, DropRefusals.Archive("The archive cannot be read: it is damaged, encrypted or packed in a way that is not read here."));
        }
    }

    private static (Contents? Contents, Refusal? Refusal) Pair(IReadOnlyList<ZipArchiveEntry> all, UploadSettings uploads)
    {
        if (all.Count > MostEntries)
            return (null, DropRefusals.Archive($"The archive has {all.Count} entries; one tape and one ticket are wanted."));
        if (all.FirstOrDefault(entry => IsOutside(entry.FullName)) is { } outside)
            return (null, DropRefusals.Archive($"The entry '{SafeName.Shown(outside.FullName)}' points outside the archive."));
        ZipArchiveEntry[] entries = [.. all.Where(entry => !IsPassedOver(entry))];
        var tapes = entries.Where(entry => DropScan.KindOf(entry.Name) == FileKind.Tape).ToArray();
        var tickets = entries.Where(entry => DropScan.KindOf(entry.Name) == FileKind.Ticket).ToArray();
        if (tapes is not [var tape] || tickets is not [var ticket] || entries.Length != 2)
            return (null, DropRefusals.Archive($"One tape (.dst) and one ticket (.json) are wanted; the archive has {tapes.Length} and {tickets.Length}, and {entries.Length - tapes.Length - tickets.Length} other files."));
        if (Bytes(tape, uploads.MaxTapeBytes) is not { } tapeBytes)
            return (null, DropRefusals.TapeTooLarge(uploads.MaxTapeBytes));
        return Bytes(ticket, uploads.MaxTicketBytes) is { } ticketBytes
            ? (new Contents(tapeBytes, ticketBytes, tape.Name), null)
            : (null, DropRefusals.TicketTooLarge(uploads.MaxTicketBytes));
    }

    private static bool IsOutside(string name) =>
        name.StartsWith('/') || name.Contains('\\') || name.Contains(':') || name.Split('/').Contains("..");

    /// <summary>Folders, hidden files and what one system's packer puts beside them for itself.</summary>
    private static bool IsPassedOver(ZipArchiveEntry entry) =>
        entry.Name.Length == 0 || entry.FullName.Split('/').Any(part => part.StartsWith('.') || part == "__MACOSX");

    private static byte[]? Bytes(ZipArchiveEntry entry, int most)
    {
        using var content = entry.Open();
        var buffer = new byte[most + 1];
        var read = content.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return read > most ? null : buffer[..read];
    }
}
