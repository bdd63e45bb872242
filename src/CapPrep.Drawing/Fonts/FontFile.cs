using System.Runtime.InteropServices;
using CapPrep.Drawing.Sheets;
using HarfBuzzSharp;
using SkiaSharp;

namespace CapPrep.Drawing.Fonts;

/// <summary>
/// One embedded face, opened for measuring (in whole font units) and for drawing. Faces are opened once and live as
/// long as the process.
/// </summary>
internal sealed class FontFile
{
    private static readonly Lazy<FontFile> Regular = new(() => new FontFile("Fonts/IBMPlexSans-Regular.ttf"));
    private static readonly Lazy<FontFile> Bold = new(() => new FontFile("Fonts/IBMPlexSans-Bold.ttf"));

    private FontFile(string resource)
    {
        Bytes = Embedded.Bytes(resource);
        Typeface = Open(Bytes);
        var pinned = GCHandle.Alloc(Bytes, GCHandleType.Pinned);
        var blob = new Blob(pinned.AddrOfPinnedObject(), Bytes.Length, MemoryMode.ReadOnly, pinned.Free);
        var face = new Face(blob, 0);
        face.MakeImmutable();
        UnitsPerEm = face.UnitsPerEm;
        Shaping = new Font(face);
        Shaping.SetScale(UnitsPerEm, UnitsPerEm);
    }

    public byte[] Bytes { get; }

    public SKTypeface Typeface { get; }

    public Font Shaping { get; }

    public int UnitsPerEm { get; }

    public static SKTypeface Open(byte[] font)
    {
        using var data = SKData.CreateCopy(font);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException("A face cannot be opened.");
    }

    public static FontFile Of(SheetFont font) => (font == SheetFont.Bold ? Bold : Regular).Value;
}
