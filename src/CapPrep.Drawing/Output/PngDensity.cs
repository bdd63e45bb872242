using System.Buffers.Binary;

namespace CapPrep.Drawing.Output;

/// <summary>Adds the chunk that says how large a PNG is on paper (PNG specification, third edition, pHYs).</summary>
internal static class PngDensity
{
    /// <summary>Signature and IHDR chunk; pHYs may stand behind them.</summary>
    private const int HeadBytes = 8 + 25;

    public static byte[] Add(ReadOnlySpan<byte> png, int dpi)
    {
        var chunk = Chunk((uint)Math.Round(dpi / 0.0254));
        return [.. png[..HeadBytes], .. chunk, .. png[HeadBytes..]];
    }

    private static byte[] Chunk(uint pixelsPerMeter)
    {
        var chunk = new byte[4 + 4 + 9 + 4];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk.AsSpan(4));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8), pixelsPerMeter);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(12), pixelsPerMeter);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(17), Crc(chunk.AsSpan(4, 13)));
        return chunk;
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var part in bytes)
        {
            crc ^= part;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
        }

        return ~crc;
    }
}
