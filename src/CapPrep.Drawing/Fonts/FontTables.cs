using System.Buffers.Binary;
using System.Text;

namespace CapPrep.Drawing.Fonts;

/// <summary>Leaves tables out of a TrueType file (OpenType specification, "Organization of an OpenType font").</summary>
internal static class FontTables
{
    private const int HeadBytes = 12;
    private const int EntryBytes = 16;

    /// <summary>
    /// The face without the tables that only place and choose glyphs. Shaping is done before drawing, and a document
    /// would carry them along for nothing.
    /// </summary>
    public static byte[] OutlinesOnly(ReadOnlySpan<byte> font) => Without(font, ["GDEF", "GPOS", "GSUB", "STAT"]);

    private static byte[] Without(ReadOnlySpan<byte> font, string[] left)
    {
        var kept = new List<(byte[] Entry, byte[] Body)>();
        for (var i = 0; i < BinaryPrimitives.ReadUInt16BigEndian(font[4..]); i++)
        {
            var entry = font.Slice(HeadBytes + (i * EntryBytes), EntryBytes);
            if (!left.Contains(Encoding.ASCII.GetString(entry[..4])))
                kept.Add((entry.ToArray(), Body(font, entry).ToArray()));
        }

        return Join(font[..4], kept);
    }

    private static ReadOnlySpan<byte> Body(ReadOnlySpan<byte> font, ReadOnlySpan<byte> entry) => font.Slice(
        (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]), (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]));

    private static byte[] Join(ReadOnlySpan<byte> version, List<(byte[] Entry, byte[] Body)> tables)
    {
        var offset = HeadBytes + (tables.Count * EntryBytes);
        var file = new byte[offset + tables.Sum(table => Padded(table.Body.Length))];
        version.CopyTo(file);
        WriteSearch(file, (ushort)tables.Count);
        for (var i = 0; i < tables.Count; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(tables[i].Entry.AsSpan(8), (uint)offset);
            tables[i].Entry.CopyTo(file, HeadBytes + (i * EntryBytes));
            tables[i].Body.CopyTo(file, offset);
            offset += Padded(tables[i].Body.Length);
        }

        return file;
    }

    /// <summary>Number of tables and what a binary search over them needs.</summary>
    private static void WriteSearch(Span<byte> file, ushort tables)
    {
        var power = (ushort)(1 << (15 - ushort.LeadingZeroCount(tables)));
        BinaryPrimitives.WriteUInt16BigEndian(file[4..], tables);
        BinaryPrimitives.WriteUInt16BigEndian(file[6..], (ushort)(power * EntryBytes));
        BinaryPrimitives.WriteUInt16BigEndian(file[8..], ushort.TrailingZeroCount(power));
        BinaryPrimitives.WriteUInt16BigEndian(file[10..], (ushort)((tables - power) * EntryBytes));
    }

    private static int Padded(int bytes) => (bytes + 3) & ~3;
}
