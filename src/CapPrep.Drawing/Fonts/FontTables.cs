using System.Buffers.Binary;
using System.Text;

namespace CapPrep.Drawing.Fonts;

/// <summary>Takes a TrueType file apart and puts it together again (OpenType specification, "Organization of an OpenType font").</summary>
internal static class FontTables
{
    private const int HeadBytes = 12;
    private const int EntryBytes = 16;

    /// <summary>The body of a table.</summary>
    public static byte[] Body(ReadOnlySpan<byte> font, string name)
    {
        for (var i = 0; i < Count(font); i++)
            if (Name(Entry(font, i)) == name)
                return Body(font, Entry(font, i)).ToArray();
        throw new InvalidOperationException($"The face has no table {name}.");
    }

    /// <summary>The same face with some tables changed; a change to null leaves the table out.</summary>
    public static byte[] Changed(ReadOnlySpan<byte> font, IReadOnlyDictionary<string, byte[]?> changes)
    {
        var tables = new List<(byte[] Entry, byte[] Body)>();
        for (var i = 0; i < Count(font); i++)
        {
            var entry = Entry(font, i);
            if (!changes.TryGetValue(Name(entry), out var body))
                tables.Add((entry.ToArray(), Body(font, entry).ToArray()));
            else if (body is not null)
                tables.Add((entry.ToArray(), body));
        }

        return Join(font[..4], tables);
    }

    private static int Count(ReadOnlySpan<byte> font) => BinaryPrimitives.ReadUInt16BigEndian(font[4..]);

    private static ReadOnlySpan<byte> Entry(ReadOnlySpan<byte> font, int index) => font.Slice(HeadBytes + (index * EntryBytes), EntryBytes);

    private static string Name(ReadOnlySpan<byte> entry) => Encoding.ASCII.GetString(entry[..4]);

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
            BinaryPrimitives.WriteUInt32BigEndian(tables[i].Entry.AsSpan(12), (uint)tables[i].Body.Length);
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
