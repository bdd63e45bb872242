using CapPrep.Drawing.Output;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Service.Results;

/// <summary>One form in which a sheet is given out.</summary>
/// <param name="Name">As in <c>?format=</c> and file names.</param>
internal sealed record Format(string Name, string ContentType, Func<Sheet, byte[]> Draw);

/// <summary>The forms of documents.</summary>
internal static class Formats
{
    public const string Tape = "application/octet-stream";
    public const string Sheet = "text/vnd.capprep.sheet";

    public static readonly Format Pdf = new("pdf", "application/pdf", SheetToPdf.Draw);
    public static readonly Format Png = new("png", "image/png", sheet => SheetToPng.Draw(sheet));
    public static readonly Format Svg = new("svg", "image/svg+xml", SheetToSvg.Draw);
}
