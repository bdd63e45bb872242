using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>Finds penetrations that meet a hole made before.</summary>
internal static class NeedleHoles
{
    // A bit map of the box is quicker than a set, as long as it is not much larger than the tape itself.
    private const int MapBitsPerStitch = 256;
    private const int SmallMapBits = 1 << 20;

    /// <param name="records">The records.</param>
    /// <param name="needle">Box of their penetrations.</param>
    /// <param name="stitches">How many there are.</param>
    public static Tally Repeated(DecodedRecords records, Box needle, int stitches)
    {
        var points = (needle.Width + 1L) * (needle.Height + 1L);
        return points <= Math.Max(SmallMapBits, (long)stitches * MapBitsPerStitch) && points < int.MaxValue
            ? RepeatedInMap(records, needle, (int)points)
            : RepeatedInSet(records, stitches);
    }

    private static Tally RepeatedInMap(DecodedRecords records, Box needle, int points)
    {
        var (kinds, xs, ys) = (records.Kinds, records.X, records.Y);
        var map = new ulong[(points >> 6) + 1];
        var width = needle.Width + 1;
        var repeated = Tally.Empty;
        for (var record = 0; record < kinds.Length; record++)
        {
            if (kinds[record] != RecordKind.Stitch)
                continue;
            var bit = ((ys[record] - needle.Bottom) * width) + xs[record] - needle.Left;
            ref var word = ref map[bit >> 6];
            var mask = 1UL << (bit & 63);
            if ((word & mask) != 0)
                repeated.Note(record);
            word |= mask;
        }

        return repeated;
    }

    private static Tally RepeatedInSet(DecodedRecords records, int stitches)
    {
        var holes = new HashSet<(int X, int Y)>(stitches);
        var repeated = Tally.Empty;
        for (var record = 0; record < records.Kinds.Length; record++)
        {
            if (records.Kinds[record] == RecordKind.Stitch && !holes.Add((records.X[record], records.Y[record])))
                repeated.Note(record);
        }

        return repeated;
    }
}
