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
        var bytes = Embedded.Bytes(resource);
        using (var data = SKData.CreateCopy(FontTables.OutlinesOnly(bytes)))
            Typeface = SKTypeface.FromData(data)
                ?? throw new InvalidOperationException($"The embedded face {resource} cannot be opened.");
        var pinned = GCHandle.Alloc(bytes, GCHandleType.Pinned);
        var blob = new Blob(pinned.AddrOfPinnedObject(), bytes.Length, MemoryMode.ReadOnly, pinned.Free);
        var face = new Face(blob, 0);
        face.MakeImmutable();
        UnitsPerEm = face.UnitsPerEm;
        Shaping = new Font(face);
        Shaping.SetScale(UnitsPerEm, UnitsPerEm);
    }

    public SKTypeface Typeface { get; }

    public Font Shaping { get; }

    public int UnitsPerEm { get; }

    public static FontFile Of(SheetFont font) => (font == SheetFont.Bold ? Bold : Regular).Value;
}
