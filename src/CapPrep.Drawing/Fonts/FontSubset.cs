using System.Buffers.Binary;

namespace CapPrep.Drawing.Fonts;

/// <summary>
/// A face reduced to the outlines that a document uses, glyph numbers unchanged: a PDF carries its faces with it, and
/// the whole ones would be most of the file (OpenType specification, tables <c>loca</c> and <c>glyf</c>).
/// </summary>
internal static class FontSubset
{
    private const int LocaFormatAt = 50;
    private const int ComponentsAt = 10;

    public static byte[] Of(byte[] font, IEnumerable<ushort> glyphs)
    {
        var (offsets, outlines) = (Offsets(font), FontTables.Body(font, "glyf"));
        var kept = WithParts(glyphs, offsets, outlines);
        var body = new List<byte>();
        var loca = new byte[offsets.Length * 4];
        for (var glyph = 0; glyph < offsets.Length - 1; glyph++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(loca.AsSpan(glyph * 4), (uint)body.Count);
            if (kept[glyph])
                body.AddRange(outlines[offsets[glyph]..offsets[glyph + 1]]);
            while (body.Count % 4 != 0)
                body.Add(0);
        }

        BinaryPrimitives.WriteUInt32BigEndian(loca.AsSpan(loca.Length - 4), (uint)body.Count);
        return FontTables.Changed(font, Changes([.. body], loca, LongOffsets(font)));
    }

    /// <summary>Shaping is done before drawing, so a document needs none of the tables that place and choose glyphs.</summary>
    private static Dictionary<string, byte[]?> Changes(byte[] outlines, byte[] loca, byte[] head) => new()
    {
        ["GDEF"] = null,
        ["GPOS"] = null,
        ["GSUB"] = null,
        ["STAT"] = null,
        ["glyf"] = outlines,
        ["loca"] = loca,
        ["head"] = head,
    };

    private static byte[] LongOffsets(byte[] font)
    {
        var head = FontTables.Body(font, "head");
        BinaryPrimitives.WriteUInt16BigEndian(head.AsSpan(LocaFormatAt), 1);
        return head;
    }

    /// <summary>Where each glyph's outline begins, and behind the last one where it ends.</summary>
    private static int[] Offsets(byte[] font)
    {
        var isLong = BinaryPrimitives.ReadUInt16BigEndian(FontTables.Body(font, "head").AsSpan(LocaFormatAt)) == 1;
        var loca = FontTables.Body(font, "loca");
        var offsets = new int[loca.Length / (isLong ? 4 : 2)];
        for (var i = 0; i < offsets.Length; i++)
            offsets[i] = isLong
                ? (int)BinaryPrimitives.ReadUInt32BigEndian(loca.AsSpan(i * 4))
                : 2 * BinaryPrimitives.ReadUInt16BigEndian(loca.AsSpan(i * 2));
        return offsets;
    }

    /// <summary>The glyphs, the empty box and everything they are put together from.</summary>
    private static bool[] WithParts(IEnumerable<ushort> glyphs, int[] offsets, byte[] outlines)
    {
        var kept = new bool[offsets.Length];
        var open = new Stack<ushort>(glyphs.Append((ushort)0));
        while (open.TryPop(out var glyph))
        {
            if (kept[glyph])
                continue;
            kept[glyph] = true;
            foreach (var part in Parts(outlines.AsSpan(offsets[glyph]..offsets[glyph + 1])))
                open.Push(part);
        }

        return kept;
    }

    private static List<ushort> Parts(ReadOnlySpan<byte> outline)
    {
        var parts = new List<ushort>();
        if (outline.Length < ComponentsAt || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
            return parts;
        var at = ComponentsAt;
        int flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline[at..]);
            parts.Add(BinaryPrimitives.ReadUInt16BigEndian(outline[(at + 2)..]));
            at += 4 + ArgumentBytes(flags);
        }
        while ((flags & 0x20) != 0);
        return parts;
    }

    private static int ArgumentBytes(int flags)
    {
        var offsets = (flags & 0x01) != 0 ? 4 : 2;
        var scale = (flags & 0x08) != 0 ? 2 : (flags & 0x40) != 0 ? 4 : (flags & 0x80) != 0 ? 8 : 0;
        return offsets + scale;
    }
}
