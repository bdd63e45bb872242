namespace CapPrep.FaultCorpus.Tapes;

/// <summary>
/// The three bytes of a record. Layout: Embroidery format DST, EduTech Wiki, University of Geneva: every bit is a step of
/// 1, 3, 9, 27 or 81 units to one side; the top bits of the third byte say jump (0x83), color stop (0xC3) or end (0xF3).
/// </summary>
internal static class Record
{
    internal const byte Stitch = 0x03;
    internal const byte Jump = 0x83;
    internal const byte Stop = 0xC3;

    internal static readonly byte[] End = [0x00, 0x00, 0xF3];

    // Byte, bit of the positive step, bit of the negative step.
    private static readonly (int Byte, int Plus, int Minus)[] X = [(0, 0, 1), (1, 0, 1), (0, 2, 3), (1, 2, 3), (2, 2, 3)];
    private static readonly (int Byte, int Plus, int Minus)[] Y = [(0, 7, 6), (1, 7, 6), (0, 5, 4), (1, 5, 4), (2, 5, 4)];

    internal const int Longest = 121;

    internal static byte[] Of(byte kind, int dx, int dy)
    {
        var bytes = new byte[] { 0, 0, kind };
        Put(bytes, X, dx);
        Put(bytes, Y, dy);
        return bytes;
    }

    private static void Put(byte[] bytes, (int Byte, int Plus, int Minus)[] bits, int step)
    {
        if (Math.Abs(step) > Longest)
            throw new ArgumentOutOfRangeException(nameof(step), step, "A record moves at most 121 units per axis.");
        for (var power = 0; power < 5; power++)
        {
            var digit = ((step % 3) + 3) % 3;
            var sign = digit == 2 ? -1 : digit;
            if (sign != 0)
                bytes[bits[power].Byte] |= (byte)(1 << (sign > 0 ? bits[power].Plus : bits[power].Minus));
            step = (step - sign) / 3;
        }
    }
}
