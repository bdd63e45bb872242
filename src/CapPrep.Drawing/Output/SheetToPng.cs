using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Draws a sheet as a PNG picture on white.</summary>
public static class SheetToPng
{
    /// <param name="sheet">The sheet.</param>
    /// <param name="dpi">Pixels per inch, 30 to 600; written into the file, so that it prints at true size.</param>
    public static byte[] Draw(Sheet sheet, int dpi = 150)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dpi, 30);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dpi, 600);
        using var surface = SKSurface.Create(new SKImageInfo(
            Pixels(sheet.Width, dpi), Pixels(sheet.Height, dpi), SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(dpi / 25.4f);
        using (var painter = new SkiaPainter(surface.Canvas, Typefaces.Whole, smoothCodes: false))
            painter.Draw(sheet);
        using var pixels = surface.PeekPixels();
        using var png = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, 6))
            ?? throw new InvalidOperationException("The picture could not be encoded.");
        return PngDensity.Add(png.ToArray(), dpi);
    }

    private static int Pixels(int hundredths, int dpi) => (int)((((long)hundredths * dpi) + 2539) / 2540);
}
