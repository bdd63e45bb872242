using System.Text;
using System.Xml;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>
/// Writes a sheet as SVG at true size in millimeters, with title and description, text as outlines with an
/// accessible name, and nothing that runs or loads.
/// </summary>
public static class SheetToSvg
{
    /// <summary>UTF-8 without a byte-order mark; equal sheets give equal bytes.</summary>
    public static byte[] Draw(Sheet sheet)
    {
        using var file = new MemoryStream();
        var settings = new XmlWriterSettings { Encoding = new UTF8Encoding(false), NewLineChars = "\n", Indent = false };
        using (var xml = XmlWriter.Create(file, settings))
            new SvgMarks(xml).Root(sheet);
        return file.ToArray();
    }
}
