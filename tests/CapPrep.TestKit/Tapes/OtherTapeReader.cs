namespace CapPrep.TestKit.Tapes;

/// <summary>A tape as <see cref="OtherTapeReader"/> reads it; positions in tape units of 0.1 mm.</summary>
/// <param name="Label">The header's LA entry, without the blanks behind it.</param>
/// <param name="Records">Records before the end record or the end of the file.</param>
/// <param name="Jumps">Records that only move.</param>
/// <param name="Penetrations">Every needle point in time order.</param>
/// <param name="StopsAfter">Per color stop: how many penetrations come before it.</param>
/// <param name="End">Position behind the last record.</param>
/// <param name="LargestMove">Largest move of one record on one axis.</param>
/// <param name="HasEndRecord">An end record was met.</param>
public sealed record OtherTape(
    string Label,
    int Records,
    int Jumps,
    IReadOnlyList<(int X, int Y)> Penetrations,
    IReadOnlyList<int> StopsAfter,
    (int X, int Y) End,
    int LargestMove,
    bool HasEndRecord)
{
    public int Stitches => Penetrations.Count;

    public int Stops => StopsAfter.Count;

    /// <summary>Smallest box around the penetrations, of which there must be one.</summary>
    public (int Left, int Bottom, int Right, int Top) Extents => (
        Penetrations.Min(point => point.X), Penetrations.Min(point => point.Y),
        Penetrations.Max(point => point.X), Penetrations.Max(point => point.Y));
}

/// <summary>
/// A second reader, to check the engine's. It is written bit by bit from the published layout (EduTech Wiki,
/// University of Geneva, "Embroidery format DST") and shares nothing with the engine. It judges nothing: it reads any
/// file of at least 512 bytes.
/// </summary>
public static class OtherTapeReader
{
    public static OtherTape Read(byte[] file)
    {
        var penetrations = new List<(int X, int Y)>();
        var stopsAfter = new List<int>();
        int x = 0, y = 0, records = 0, jumps = 0, largest = 0;
        var ended = false;
        for (var at = 512; at + 3 <= file.Length; at += 3)
        {
            byte b1 = file[at], b2 = file[at + 1], b3 = file[at + 2];
            ended = b1 == 0x00 && b2 == 0x00 && b3 == 0xF3;
            if (ended)
                break;
            records++;
            var dx = MoveX(b1, b2, b3);
            var dy = MoveY(b1, b2, b3);
            x += dx;
            y += dy;
            largest = Math.Max(largest, Math.Max(Math.Abs(dx), Math.Abs(dy)));
            var (jump, color) = (Bit(b3, 7), Bit(b3, 6));
            if (jump == 1 && color == 1)
                stopsAfter.Add(penetrations.Count);
            else if (jump == 1)
                jumps++;
            else if (color == 0)
                penetrations.Add((x, y));
        }

        return new(LabelOf(file), records, jumps, penetrations, stopsAfter, (x, y), largest, ended);
    }

    private static int MoveX(byte b1, byte b2, byte b3)
    {
        var x = 0;
        x += 1 * Bit(b1, 0);
        x -= 1 * Bit(b1, 1);
        x += 9 * Bit(b1, 2);
        x -= 9 * Bit(b1, 3);
        x += 3 * Bit(b2, 0);
        x -= 3 * Bit(b2, 1);
        x += 27 * Bit(b2, 2);
        x -= 27 * Bit(b2, 3);
        x += 81 * Bit(b3, 2);
        x -= 81 * Bit(b3, 3);
        return x;
    }

    private static int MoveY(byte b1, byte b2, byte b3)
    {
        var y = 0;
        y += 1 * Bit(b1, 7);
        y -= 1 * Bit(b1, 6);
        y += 9 * Bit(b1, 5);
        y -= 9 * Bit(b1, 4);
        y += 3 * Bit(b2, 7);
        y -= 3 * Bit(b2, 6);
        y += 27 * Bit(b2, 5);
        y -= 27 * Bit(b2, 4);
        y += 81 * Bit(b3, 5);
        y -= 81 * Bit(b3, 4);
        return y;
    }

    private static int Bit(byte value, int bit) => (value / (1 << bit)) % 2;

    private static string LabelOf(byte[] file)
    {
        var label = new string([.. file.Take(512).Select(code => (char)code)]);
        var start = label.IndexOf("LA:", StringComparison.Ordinal);
        if (start < 0)
            return "";
        var end = label.IndexOf('\r', start);
        return label[(start + 3)..(end < 0 ? start + 19 : end)].TrimEnd(' ');
    }
}
