using ZXing;
using ZXing.QrCode.Internal;

namespace CapPrep.Drawing.Sheets;

/// <summary>QR codes (ISO/IEC 18004) at error correction level Q; the mode follows from the text.</summary>
internal static class CodeMatrix
{
    /// <summary>Light modules that must stay free around a code (ISO/IEC 18004).</summary>
    public const int QuietModules = 4;

    /// <summary>Draws a code into a square box, quiet zone included; modules are whole 0.01 mm.</summary>
    public static CodeMark Qr(string text, SheetBox box, Ink ink)
    {
        var rows = Rows(text);
        var module = Math.Min(box.Width, box.Height) / (rows.Count + (2 * QuietModules));
        var side = module * rows.Count;
        var center = box.Center;
        return new CodeMark(text, rows, new SheetBox(center.X - (side / 2), center.Y - (side / 2), side, side), ink);
    }

    private static List<string> Rows(string text)
    {
        var hints = new Dictionary<EncodeHintType, object>();
        if (text.Any(sign => sign > '~'))
            hints[EncodeHintType.CHARACTER_SET] = "UTF-8";
        var matrix = Encoder.encode(text, ErrorCorrectionLevel.Q, hints).Matrix;
        var rows = new List<string>(matrix.Height);
        for (var y = 0; y < matrix.Height; y++)
        {
            var row = y;
            rows.Add(string.Create(matrix.Width, matrix, (cells, source) =>
            {
                for (var x = 0; x < cells.Length; x++)
                    cells[x] = source[x, row] == 1 ? '1' : '0';
            }));
        }

        return rows;
    }
}
