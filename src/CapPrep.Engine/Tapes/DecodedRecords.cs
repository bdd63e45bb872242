namespace CapPrep.Engine.Tapes;

/// <summary>The records of a tape as arrays, one entry per record.</summary>
internal sealed class DecodedRecords
{
    private static readonly int[] FirstByte = RecordLayout.MovesOfByte(0);
    private static readonly int[] SecondByte = RecordLayout.MovesOfByte(1);
    private static readonly int[] ThirdByte = RecordLayout.MovesOfByte(2);

    private Tally _impossible = Tally.Empty;
    private Tally _unusual = Tally.Empty;

    private DecodedRecords(int count)
    {
        Kinds = GC.AllocateUninitializedArray<RecordKind>(count);
        X = GC.AllocateUninitializedArray<int>(count);
        Y = GC.AllocateUninitializedArray<int>(count);
    }

    public RecordKind[] Kinds { get; }

    /// <summary>Position behind each record, tape units.</summary>
    public int[] X { get; }

    public int[] Y { get; }

    /// <summary>Records with bits that no writer sets.</summary>
    public Tally Impossible => _impossible;

    /// <summary>Impossible records and those whose type bits have no known meaning.</summary>
    public Tally Unusual => _unusual;

    /// <param name="body">The file behind its header.</param>
    /// <param name="count">Whole records to decode.</param>
    public static DecodedRecords Of(ReadOnlySpan<byte> body, int count)
    {
        var records = new DecodedRecords(count);
        records.Decode(body[..(count * Tape.RecordBytes)]);
        return records;
    }

    // Unchecked: a position is at most 121 times the number of records, far inside an int.
    private void Decode(ReadOnlySpan<byte> body)
    {
        var (kinds, xs, ys) = (Kinds, X, Y);
        var (firsts, seconds, thirds) = (FirstByte, SecondByte, ThirdByte);
        var kindOf = RecordLayout.KindByTopBits;
        var (x, y) = (0, 0);
        for (var record = 0; record < kinds.Length && body.Length >= Tape.RecordBytes; record++)
        {
            int first = body[0], second = body[1], third = body[2];
            body = body[Tape.RecordBytes..];
            unchecked
            {
                var move = firsts[first] + seconds[second] + thirds[third];
                var dx = (short)move;
                x += dx;
                y += (move - dx) >> 16;
            }

            xs[record] = x;
            ys[record] = y;
            var kind = kindOf[third >> 6];
            kinds[record] = kind;
            var impossible = RecordLayout.IsImpossible(first, second, third);
            if (impossible || kind == RecordKind.Unknown)
                Note(record, impossible);
        }
    }

    private void Note(int record, bool impossible)
    {
        _unusual.Note(record);
        if (impossible)
            _impossible.Note(record);
    }
}
