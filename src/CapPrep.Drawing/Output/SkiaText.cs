using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Draws one line of text glyph by glyph, each at the place the shaper gave it.</summary>
internal static class SkiaText
{
    public static void Draw(SKCanvas canvas, SKPaint paint, SKTypeface face, TextMark mark)
    {
        var unitsPerEm = FontFile.Of(mark.Font).UnitsPerEm;
        var line = Shaper.Shape(SafeText.Clean(mark.Text), mark.Font);
        using (var blob = Blob(face, unitsPerEm, line, mark))
        {
            if (blob is not null)
                canvas.DrawText(blob, SkiaPaths.Mm(mark.At.X), SkiaPaths.Mm(mark.At.Y), paint);
        }

        foreach (var glyph in line.Glyphs.Where(glyph => glyph.Id == 0))
            DrawMissing(canvas, paint, mark, glyph, unitsPerEm);
    }

    private static SKTextBlob? Blob(SKTypeface face, int unitsPerEm, ShapedLine line, TextMark mark)
    {
        var known = line.Glyphs.Where(glyph => glyph.Id != 0).ToArray();
        if (known.Length == 0)
            return null;
        var mmPerUnit = SkiaPaths.Mm(mark.Size) / unitsPerEm;
        using var font = new SKFont(face, SkiaPaths.Mm(mark.Size), 1, 0)
        {
            Subpixel = true,
            LinearMetrics = true,
            Hinting = SKFontHinting.None,
            Edging = SKFontEdging.Antialias,
        };
        using var builder = new SKTextBlobBuilder();
        builder.AddPositionedRun(
            [.. known.Select(glyph => glyph.Id)],
            font,
            [.. known.Select(glyph => new SKPoint(glyph.X * mmPerUnit, -glyph.Y * mmPerUnit))]);
        return builder.Build();
    }

    private static void DrawMissing(SKCanvas canvas, SKPaint paint, TextMark mark, Glyph glyph, int unitsPerEm)
    {
        using var path = SkiaPaths.Lines(MissingGlyph.Rings(mark, glyph, unitsPerEm), closed: true);
        canvas.DrawPath(path, paint);
    }
}
