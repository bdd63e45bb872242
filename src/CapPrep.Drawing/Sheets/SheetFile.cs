using System.Text;

namespace CapPrep.Drawing.Sheets;

/// <summary>
/// The stored form of a sheet: UTF-8 text, one mark per line, whole numbers only, every other sign than printable
/// ASCII escaped. Equal sheets give equal bytes on every machine, and reading gives back the sheet exactly.
/// </summary>
public static class SheetFile
{
    internal const string Magic = "capprep-sheet 1";
    internal const string DateForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    public static byte[] Write(Sheet sheet) => Encoding.ASCII.GetBytes(Text(sheet));

    /// <summary>The same as text, for comparing and reading.</summary>
    public static string Text(Sheet sheet)
    {
        var writer = new SheetTextWriter();
        writer.Head(sheet);
        foreach (var mark in sheet.Marks)
            writer.Mark(mark);
        return writer.ToString();
    }

    /// <exception cref="FormatException">The bytes are not a sheet written by <see cref="Write"/>.</exception>
    public static Sheet Read(ReadOnlySpan<byte> bytes) => new SheetTextReader(Encoding.ASCII.GetString(bytes)).Sheet();
}
