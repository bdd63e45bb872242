using CapPrep.Service.Plumbing;

namespace CapPrep.Service.HotFolder;

/// <summary>What one drop brings: a tape and a ticket, both unread.</summary>
/// <param name="TapeName">Name of the tape, to be shown.</param>
internal sealed record Contents(byte[] Tape, byte[] Ticket, string TapeName);

/// <summary>Reads the files of a drop that was taken: plain ones only, never more than their kind may have.</summary>
internal sealed class DropContents(UploadSettings uploads)
{
    private const int Wrapping = 16 * 1024;

    /// <param name="files">Names in the folder, as <see cref="Parcel.Files"/>.</param>
    public (Contents? Contents, Refusal? Refusal) Read(string folder, IReadOnlyList<string> files)
    {
        try
        {
            return Plain(folder, files);
        }
        catch (UnauthorizedAccessException)
        {
            return (null, DropRefusals.Unreadable(files));
        }
    }

    private (Contents? Contents, Refusal? Refusal) Plain(string folder, IReadOnlyList<string> files)
    {
        if (files is [var archive])
            return OfArchive(Path.Combine(folder, archive));
        var (tape, ticket) = (Path.Combine(folder, files[0]), Path.Combine(folder, files[1]));
        if (new[] { tape, ticket }.FirstOrDefault(path => !IsPlain(path)) is { } odd)
            return (null, DropRefusals.NotPlain(new FoundFile(Path.GetFileName(odd), DropScan.KindOf(odd), false, 0, default)));
        if (Bytes(tape, uploads.MaxTapeBytes) is not { } tapeBytes)
            return (null, DropRefusals.TapeTooLarge(uploads.MaxTapeBytes));
        return Bytes(ticket, uploads.MaxTicketBytes) is { } ticketBytes
            ? (new Contents(tapeBytes, ticketBytes, files[0]), null)
            : (null, DropRefusals.TicketTooLarge(uploads.MaxTicketBytes));
    }

    private (Contents? Contents, Refusal? Refusal) OfArchive(string path)
    {
        if (!IsPlain(path))
            return (null, DropRefusals.NotPlain(new FoundFile(Path.GetFileName(path), FileKind.Archive, false, 0, default)));
        return Bytes(path, uploads.MaxTapeBytes + uploads.MaxTicketBytes + Wrapping) is { } bytes
            ? Archive.Read(bytes, uploads)
            : (null, DropRefusals.Archive("The archive is larger than a tape and a ticket may be together."));
    }

    // Somebody may have put a link in the place of the file between the look and the rename.
    private static bool IsPlain(string path) =>
        new FileInfo(path) is { LinkTarget: null } file && (file.Attributes & (FileAttributes.Directory | FileAttributes.Device)) == 0;

    /// <summary>Null: more than allowed. What has no length is not opened: a pipe would never end.</summary>
    private static byte[]? Bytes(string path, int most)
    {
        var length = new FileInfo(path).Length;
        if (length > most)
            return null;
        if (length == 0)
            return [];

        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var buffer = new byte[length];
        var read = file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return buffer[..read];
    }
}
