using System.Buffers;
using System.Text.Unicode;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tapes;

/// <summary>A file that is recognized as something else than a tape.</summary>
/// <param name="Code">The code it is refused with.</param>
/// <param name="Noun">What it is, with its article.</param>
internal sealed record ForeignFile(string Code, string Noun)
{
    private static readonly Signature[] Signatures =
    [
        new(0, [0x50, 0x4B, 0x03, 0x04], new(ViolationCodes.TapeIsArchive, "a ZIP archive")),
        new(0, [0x50, 0x4B, 0x05, 0x06], new(ViolationCodes.TapeIsArchive, "an empty ZIP archive")),
        new(0, [0x1F, 0x8B], new(ViolationCodes.TapeIsArchive, "a gzip archive")),
        new(0, [0x37, 0x7A, 0xBC, 0xAF, 0x27, 0x1C], new(ViolationCodes.TapeIsArchive, "a 7z archive")),
        new(0, [0xFD, 0x37, 0x7A, 0x58, 0x5A, 0x00], new(ViolationCodes.TapeIsArchive, "an xz archive")),
        new(0, [0x28, 0xB5, 0x2F, 0xFD], new(ViolationCodes.TapeIsArchive, "a Zstandard archive")),
        new(0, [0x52, 0x61, 0x72, 0x21, 0x1A, 0x07], new(ViolationCodes.TapeIsArchive, "a RAR archive")),
        new(257, [0x75, 0x73, 0x74, 0x61, 0x72], new(ViolationCodes.TapeIsArchive, "a tar archive")),
        new(0, [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], new(ViolationCodes.TapeIsPicture, "a PNG picture")),
        new(0, [0xFF, 0xD8, 0xFF], new(ViolationCodes.TapeIsPicture, "a JPEG picture")),
        new(0, [0x47, 0x49, 0x46, 0x38], new(ViolationCodes.TapeIsPicture, "a GIF picture")),
        new(0, [0x25, 0x50, 0x44, 0x46, 0x2D], new(ViolationCodes.TapeIsPicture, "a PDF document")),
        new(0, [0x25, 0x21, 0x50, 0x53], new(ViolationCodes.TapeIsPicture, "a PostScript drawing")),
        new(0, [0x49, 0x49, 0x2A, 0x00], new(ViolationCodes.TapeIsPicture, "a TIFF picture")),
        new(0, [0x4D, 0x4D, 0x00, 0x2A], new(ViolationCodes.TapeIsPicture, "a TIFF picture")),
        new(8, [0x57, 0x45, 0x42, 0x50], new(ViolationCodes.TapeIsPicture, "a WebP picture")),
        new(0, [0xFF, 0xFE], new(ViolationCodes.TapeIsText, "text")),
        new(0, [0xFE, 0xFF], new(ViolationCodes.TapeIsText, "text")),
    ];

    private static readonly ForeignFile Text = new(ViolationCodes.TapeIsText, "text");
    private static readonly ForeignFile Json = new(ViolationCodes.TapeIsText, "JSON text");
    private static readonly ForeignFile Xml = new(ViolationCodes.TapeIsText, "XML text");
    private static readonly ForeignFile Svg = new(ViolationCodes.TapeIsPicture, "an SVG drawing");

    /// <summary>Control characters that no text holds; tabs, line ends and the old end-of-file mark may stand in one.</summary>
    private static readonly SearchValues<byte> NeverInText = SearchValues.Create(
        [.. Enumerable.Range(0, 0x20).Append(0x7F)
            .Where(code => code is not (0x09 or 0x0A or 0x0C or 0x0D or 0x1A))
            .Select(code => (byte)code)]);

    /// <summary>Null when the bytes may be a tape.</summary>
    public static ForeignFile? Recognize(ReadOnlySpan<byte> bytes)
    {
        foreach (var signature in Signatures)
        {
            if (signature.Marks(bytes))
                return signature.File;
        }

        // A file that begins like a tape's header is a tape, whole or not.
        return !bytes.StartsWith("LA:"u8) && IsText(bytes) ? KindOfText(bytes) : null;
    }

    private static bool IsText(ReadOnlySpan<byte> bytes) =>
        !bytes.ContainsAny(NeverInText) && (Utf8.IsValid(bytes) || IsMostlyAscii(bytes));

    /// <summary>Text in an older one-byte alphabet: at most one letter in eight is not ASCII.</summary>
    private static bool IsMostlyAscii(ReadOnlySpan<byte> bytes)
    {
        var beyond = 0;
        foreach (var code in bytes)
            beyond += code >> 7;
        return (long)beyond * 8 <= bytes.Length;
    }

    private static ForeignFile KindOfText(ReadOnlySpan<byte> bytes)
    {
        var text = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        text = text.TrimStart(" \t\r\n"u8);
        if (text.StartsWith("{"u8) || text.StartsWith("["u8))
            return Json;
        if (!text.StartsWith("<"u8))
            return Text;
        return text[..Math.Min(text.Length, 1024)].IndexOf("<svg"u8) >= 0 ? Svg : Xml;
    }

    private sealed record Signature(int Offset, byte[] Bytes, ForeignFile File)
    {
        public bool Marks(ReadOnlySpan<byte> file) =>
            file.Length >= Offset + Bytes.Length && file.Slice(Offset, Bytes.Length).SequenceEqual(Bytes);
    }
}
