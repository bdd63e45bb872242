using System.Globalization;
using System.Text;

namespace CapPrep.TestKit.Tapes;

/// <summary>
/// Tapes byte by byte, whole and damaged. Header and records by the published layout (EduTech Wiki, University of
/// Geneva, "Embroidery format DST"), not by the engine's writer.
/// </summary>
public static class RawTape
{
    public const int HeaderBytes = 512;

    public static readonly byte[] End = [0x00, 0x00, 0xF3];

    /// <summary>One unit to the right, needle down.</summary>
    public static readonly byte[] Right1 = [0x01, 0x00, 0x03];

    /// <summary>One unit to the left, needle down.</summary>
    public static readonly byte[] Left1 = [0x02, 0x00, 0x03];

    /// <summary>81 units to the right, needle up.</summary>
    public static readonly byte[] JumpRight81 = [0x00, 0x00, 0x87];

    /// <summary>No move, needle up.</summary>
    public static readonly byte[] Jump0 = [0x00, 0x00, 0x83];

    public static readonly byte[] Stop = [0x00, 0x00, 0xC3];

    /// <summary>No move, needle down.</summary>
    public static readonly byte[] Stitch0 = [0x00, 0x00, 0x03];

    /// <summary>Type bits without a meaning.</summary>
    public static readonly byte[] Unknown = [0x00, 0x00, 0x43];

    /// <summary>Plus and minus 1 in x at once.</summary>
    public static readonly byte[] Impossible = [0x03, 0x00, 0x03];

    /// <summary>A header with the announcements given.</summary>
    public static byte[] Header(int records, int stops = 0, int right = 0, int left = 0, int up = 0, int down = 0)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"LA:RAW             \rST:{records,7}\rCO:{stops,3}\r+X:{right,5}\r-X:{left,5}\r+Y:{up,5}\r-Y:{down,5}\rAX:+    0\rAY:+    0\rMX:+    0\rMY:+    0\rPD:******\r\u001A");
        return Encoding.ASCII.GetBytes(text.PadRight(HeaderBytes));
    }

    /// <summary>A header, records, an end record and a closing byte.</summary>
    public static byte[] Of(byte[] header, params IEnumerable<byte[]> records) =>
        [.. header, .. records.SelectMany(record => record), .. End, 0x1A];

    /// <summary>The file without end record and closing byte.</summary>
    public static byte[] WithoutEnd(this byte[] tape) => tape[..^4];

    /// <summary>The file with bytes behind its last one.</summary>
    public static byte[] Then(this byte[] tape, params byte[] more) => [.. tape, .. more];

    /// <summary>The file with one record replaced.</summary>
    public static byte[] WithRecord(this byte[] tape, int record, byte[] bytes)
    {
        byte[] changed = [.. tape];
        bytes.CopyTo(changed, HeaderBytes + (3 * record));
        return changed;
    }

    /// <summary>The file with one header entry overwritten, e.g. <c>ST</c>; the value keeps the entry's length.</summary>
    public static byte[] WithHeader(this byte[] tape, string key, string value)
    {
        var header = Encoding.Latin1.GetString(tape, 0, HeaderBytes);
        var start = header.IndexOf(key + ":", StringComparison.Ordinal) + key.Length + 1;
        var length = header.IndexOf('\r', start) - start;
        byte[] changed = [.. tape];
        Encoding.ASCII.GetBytes(value.PadLeft(length)[..length]).CopyTo(changed, start);
        return changed;
    }
}
