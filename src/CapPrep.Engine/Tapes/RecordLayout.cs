namespace CapPrep.Engine.Tapes;

/// <summary>
/// The bits of one record, three bytes: each axis is a sum of the weights 1, 3, 9, 27 and 81 with a bit for plus and
/// a bit for minus, the two top bits of the third byte say what the record does, its two low bits are always set.
/// Source: EduTech Wiki, University of Geneva, "Embroidery format DST".
/// </summary>
internal static class RecordLayout
{
    /// <summary>The low bits of the third byte, set in every record.</summary>
    public const byte AlwaysSet = 0b0000_0011;

    /// <summary>The third byte of an end record; the first two are zero.</summary>
    public const byte End = 0b1111_0011;

    /// <summary>Closes a file and a header.</summary>
    public const byte CloseByte = 0x1A;

    private const int ColorBit = 0b0100_0000;
    private const int JumpBit = 0b1000_0000;

    private static readonly Weight[] Weights =
    [
        new(1, Byte: 0, PlusX: 0x01, MinusX: 0x02, PlusY: 0x80, MinusY: 0x40),
        new(3, Byte: 1, PlusX: 0x01, MinusX: 0x02, PlusY: 0x80, MinusY: 0x40),
        new(9, Byte: 0, PlusX: 0x04, MinusX: 0x08, PlusY: 0x20, MinusY: 0x10),
        new(27, Byte: 1, PlusX: 0x04, MinusX: 0x08, PlusY: 0x20, MinusY: 0x10),
        new(81, Byte: 2, PlusX: 0x04, MinusX: 0x08, PlusY: 0x20, MinusY: 0x10),
    ];

    private static readonly RecordKind[] Kinds =
        [RecordKind.Stitch, RecordKind.Unknown, RecordKind.Jump, RecordKind.ColorStop];

    private static readonly int[] XBits = BitsOfMoves(weight => (weight.PlusX, weight.MinusX));
    private static readonly int[] YBits = BitsOfMoves(weight => (weight.PlusY, weight.MinusY));

    /// <summary>What a record does, by the two top bits of its third byte.</summary>
    public static ReadOnlySpan<RecordKind> KindByTopBits => Kinds;

    /// <summary>
    /// What each value of one of the three bytes adds to the position: dx + 65536 dy, so that the three entries of
    /// a record add up to its move in one number.
    /// </summary>
    public static int[] MovesOfByte(int position)
    {
        var moves = new int[256];
        foreach (var weight in Weights.Where(weight => weight.Byte == position))
        {
            for (var value = 0; value < moves.Length; value++)
                moves[value] += weight.MoveOf(value);
        }

        return moves;
    }

    /// <summary>True when plus and minus of one weight are both set, or a bit that is always set is not.</summary>
    public static bool IsImpossible(int first, int second, int third)
    {
        const int everyPair = 0b0101_0101;
        const int pairsOfThird = 0b0001_0100;
        var pairs = ((first & (first >> 1)) | (second & (second >> 1))) & everyPair;
        return (pairs | (third & (third >> 1) & pairsOfThird) | (~third & AlwaysSet)) != 0;
    }

    /// <summary>The three bytes of a record, lowest byte first.</summary>
    /// <param name="kind">Stitch, jump or color stop.</param>
    /// <param name="dx">-121 to 121 tape units.</param>
    /// <param name="dy">-121 to 121 tape units.</param>
    public static int BitsOf(RecordKind kind, int dx, int dy) =>
        XBits[dx + Tape.MaxMove] | YBits[dy + Tape.MaxMove] | ((AlwaysSet | TopBitsOf(kind)) << 16);

    private static int TopBitsOf(RecordKind kind) => kind switch
    {
        RecordKind.Stitch => 0,
        RecordKind.Jump => JumpBit,
        RecordKind.ColorStop => JumpBit | ColorBit,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Only stitches, jumps and stops are written."),
    };

    /// <summary>Bits for every move from -121 to 121: its digits in balanced base three.</summary>
    private static int[] BitsOfMoves(Func<Weight, (int Plus, int Minus)> signs)
    {
        var bits = new int[(2 * Tape.MaxMove) + 1];
        for (var index = 0; index < bits.Length; index++)
        {
            var rest = index;
            foreach (var weight in Weights)
            {
                var (plus, minus) = signs(weight);
                var digit = rest % 3;
                rest /= 3;
                bits[index] |= (digit == 2 ? plus : digit == 0 ? minus : 0) << (8 * weight.Byte);
            }
        }

        return bits;
    }

    private sealed record Weight(int Units, int Byte, int PlusX, int MinusX, int PlusY, int MinusY)
    {
        public int MoveOf(int value) => Sign(value, PlusX, MinusX) + (65536 * Sign(value, PlusY, MinusY));

        private int Sign(int value, int plus, int minus) =>
            ((value & plus) != 0 ? Units : 0) - ((value & minus) != 0 ? Units : 0);
    }
}
