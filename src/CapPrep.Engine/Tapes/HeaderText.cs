using System.Globalization;
using System.Text;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>
/// The header of a tape: entries of two characters, a colon and a value, each ended by a carriage return, closed by
/// one 0x1A and filled with blanks to 512 bytes. Source: EduTech Wiki, University of Geneva, "Embroidery format DST".
/// </summary>
internal static class HeaderText
{
    /// <summary>Characters of a label.</summary>
    public const int LabelLength = 16;

    /// <summary>Reads what can be read; a missing or unreadable entry is null.</summary>
    public static TapeHeader Read(ReadOnlySpan<byte> header)
    {
        var lines = Encoding.Latin1.GetString(header).Split('\r', '\n');
        return new()
        {
            Label = Printable(Entry(lines, "LA") ?? "").Trim(),
            Records = Number(lines, "ST"),
            ColorStops = Number(lines, "CO"),
            PlusX = Number(lines, "+X"),
            MinusX = Number(lines, "-X"),
            PlusY = Number(lines, "+Y"),
            MinusY = Number(lines, "-Y"),
            EndX = Number(lines, "AX"),
            EndY = Number(lines, "AY"),
        };
    }

    /// <summary>Writes a header of 512 bytes.</summary>
    /// <param name="label">As <see cref="LabelFrom"/> gives it.</param>
    /// <param name="records">Records before the end record.</param>
    /// <param name="colorStops">Color stops among them.</param>
    /// <param name="needle">Box of the penetrations, from the start point.</param>
    /// <param name="end">Position behind the last record, from the start point.</param>
    public static byte[] Write(string label, int records, int colorStops, Box needle, TapePoint end)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"LA:{label,-LabelLength}\rST:{records,7}\rCO:{colorStops,3}\r+X:{Reach(needle.Right),5}\r-X:{Reach(-needle.Left),5}\r+Y:{Reach(needle.Top),5}\r-Y:{Reach(-needle.Bottom),5}\rAX:{Signed(end.X)}\rAY:{Signed(end.Y)}\rMX:{Signed(0)}\rMY:{Signed(0)}\rPD:******\r");
        var bytes = Enumerable.Repeat((byte)' ', Tape.HeaderBytes).ToArray();
        var length = Encoding.ASCII.GetBytes(text, bytes);
        bytes[length] = RecordLayout.CloseByte;
        return bytes;
    }

    /// <summary>How far a design reaches from the start point; 0 when it lies wholly on the other side.</summary>
    public static int Reach(int edge) => Math.Max(0, edge);

    /// <summary>A label as a header can hold it: printable ASCII, at most 16 characters.</summary>
    public static string LabelFrom(string wanted)
    {
        var label = Printable(wanted).Trim();
        return label.Length <= LabelLength ? label : label[..LabelLength].TrimEnd();
    }

    private static string Signed(int value) =>
        string.Create(CultureInfo.InvariantCulture, $"{(value < 0 ? '-' : '+')}{Math.Abs(value),5}");

    private static string Printable(string text) =>
        string.Concat(text.Select(letter => letter is >= ' ' and <= '~' ? letter : '_'));

    private static string? Entry(string[] lines, string key)
    {
        var line = Array.Find(lines, line => line.StartsWith(key + ":", StringComparison.Ordinal));
        return line?[(key.Length + 1)..];
    }

    private static int? Number(string[] lines, string key)
    {
        var digits = Entry(lines, key)?.Replace(" ", "", StringComparison.Ordinal);
        return int.TryParse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;
    }
}
