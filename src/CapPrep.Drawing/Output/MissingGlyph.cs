using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>
/// The box with a stroke through it that stands where a face lacks a character: a reader must see that something is
/// missing.
/// </summary>
internal static class MissingGlyph
{
    /// <summary>Rings on the sheet, filled even-odd.</summary>
    public static IReadOnlyList<IReadOnlyList<SheetPoint>> Rings(TextMark mark, Glyph glyph, int unitsPerEm)
    {
        var (width, height, line) = (600, 700, 60);
        IReadOnlyList<IReadOnlyList<SheetPoint>> rings =
        [
            [At(50, 0), At(50 + width, 0), At(50 + width, height), At(50, height)],
            [At(50 + line, line), At(50 + width - line, line), At(50 + width - line, height - line)],
            [At(50 + line, line + line), At(50 + line, height - line), At(50 + width - line - line, height - line)],
        ];
        return rings;

        SheetPoint At(int x, int y) => mark.At.Move(
            Scaled((glyph.X * 1000L / unitsPerEm) + x), -Scaled(y));

        int Scaled(long thousandths) => (int)(thousandths * mark.Size / 1000);
    }
}
