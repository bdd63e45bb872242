namespace CapPrep.Engine.Tapes;

/// <summary>Where the records of a file lie and how it ends; nothing is decoded yet.</summary>
/// <param name="Records">Whole records before the end record, or before the end of the file.</param>
internal readonly record struct TapeBody(int Records, TapeEnding Ending)
{
    /// <summary>Offset behind the last whole record.</summary>
    public long EndOffset => Tape.ByteOffsetOf(Records);

    /// <summary>Finds the end of the records; <paramref name="bytes"/> is at least as long as a header.</summary>
    public static TapeBody Find(ReadOnlySpan<byte> bytes)
    {
        var body = bytes[Tape.HeaderBytes..];
        var end = EndRecordIn(body);
        if (end < 0)
            return new(body.Length / Tape.RecordBytes, new(false, PartBytes(body), 0));
        return new(end / Tape.RecordBytes, new(true, 0, BytesAfter(body[(end + Tape.RecordBytes)..])));
    }

    private static int EndRecordIn(ReadOnlySpan<byte> body)
    {
        ReadOnlySpan<byte> end = [0, 0, RecordLayout.End];
        for (var from = 0; from < body.Length;)
        {
            var found = body[from..].IndexOf(end);
            if (found < 0)
                return -1;
            if ((from + found) % Tape.RecordBytes == 0)
                return from + found;
            from += found + 1;
        }

        return -1;
    }

    private static int PartBytes(ReadOnlySpan<byte> body)
    {
        var part = body.Length % Tape.RecordBytes;
        return part == 1 && body[^1] == RecordLayout.CloseByte ? 0 : part;
    }

    private static int BytesAfter(ReadOnlySpan<byte> rest) =>
        rest is [RecordLayout.CloseByte] ? 0 : rest.Length;
}
