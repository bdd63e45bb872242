using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Writes a sheet as a one-page PDF at true size, with selectable text and the sheet's own date.</summary>
public static class SheetToPdf
{
    private const float PointsPerMm = 72f / 25.4f;

    /// <summary>Equal sheets give equal bytes on one machine and library version.</summary>
    public static byte[] Draw(Sheet sheet)
    {
        using var faces = Typefaces.For(sheet);
        using var file = new MemoryStream();
        using (var document = SKDocument.CreatePdf(file, Metadata(sheet)))
        {
            var canvas = document.BeginPage(
                SkiaPaths.Mm(sheet.Width) * PointsPerMm, SkiaPaths.Mm(sheet.Height) * PointsPerMm);
            canvas.Scale(PointsPerMm);
            using (var painter = new SkiaPainter(canvas, faces, smoothCodes: true))
                painter.Draw(sheet);
            document.EndPage();
            document.Close();
        }

        return file.ToArray();
    }

    private static SKDocumentPdfMetadata Metadata(Sheet sheet) => new(300f)
    {
        Title = SafeText.Clean(sheet.Title),
        Subject = SafeText.Clean(sheet.Description),
        Author = "CapPrep",
        Creator = "CapPrep",
        Creation = sheet.Created.UtcDateTime,
        Modified = sheet.Created.UtcDateTime,
    };
}
