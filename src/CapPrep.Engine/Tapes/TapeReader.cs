using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tapes;

/// <summary>How a tape is read.</summary>
public sealed record TapeReading
{
    public static readonly TapeReading Standard = new();

    /// <summary>Records accepted, 1 to 2,000,000.</summary>
    public int MaxRecords { get; init; } = 2_000_000;

    /// <summary>Consecutive jump records that mean a trim, at least 1; used only to report unclear trims.</summary>
    public int TrimJumps { get; init; } = 3;
}

/// <summary>
/// Reads a tape (DST) from the bytes of a file. What is merely odd is a quirk of the tape; refused is only what cannot
/// be a tape. Published layout: EduTech Wiki, University of Geneva, "Embroidery format DST".
/// </summary>
public static class TapeReader
{
    /// <summary>Bytes of the shortest tape: a header and one record.</summary>
    public const int ShortestTape = Tape.HeaderBytes + Tape.RecordBytes;

    // House limit: a bad sector is still a tape, another file is not.
    private const int ImpossiblePercent = 1;

    /// <summary>
    /// Reads a whole file. Never throws on bytes; refusals are of part <c>tape</c> and carry a byte offset.
    /// </summary>
    public static ReadResult<Tape> Read(ReadOnlySpan<byte> bytes, TapeReading settings)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.MaxRecords, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.TrimJumps, 1);
        var faults = new Faults("tape", "A tape");
        NameWhatIsNoTape(bytes, faults);
        if (faults.Any)
            return ReadResult<Tape>.Refused(faults.Violations);
        var body = TapeBody.Find(bytes);
        CountRecords(body, settings, faults);
        if (faults.Any)
            return ReadResult<Tape>.Refused(faults.Violations);
        var records = DecodedRecords.Of(bytes[Tape.HeaderBytes..], body.Records);
        JudgeRecords(records, faults);
        return faults.Any
            ? ReadResult<Tape>.Refused(faults.Violations)
            : ReadResult<Tape>.Of(Assemble(bytes, body, records, settings));
    }

    private static void NameWhatIsNoTape(ReadOnlySpan<byte> bytes, Faults faults)
    {
        if (bytes.IsEmpty)
            faults.At(0, ViolationCodes.TapeEmpty, "The file is empty; a tape has a header of 512 bytes and at least one record.");
        else if (ForeignFile.Recognize(bytes) is { } foreign)
            faults.At(0, foreign.Code, $"The file is {foreign.Noun}, not a tape.");
        else if (bytes.Length < ShortestTape)
            faults.At(bytes.Length, ViolationCodes.TapeTooShort, Sentence.Of(
                $"The file ends at byte {bytes.Length}; a tape has a header of 512 bytes and at least one record of 3."));
    }

    private static void CountRecords(TapeBody body, TapeReading settings, Faults faults)
    {
        if (body.Records <= settings.MaxRecords)
            return;
        var offset = Tape.ByteOffsetOf(settings.MaxRecords);
        faults.At(offset, ViolationCodes.TooManyRecords, Sentence.Of(
            $"The tape has {body.Records} records; at most {settings.MaxRecords} are read. The first record too many begins at byte {offset}."));
    }

    private static void JudgeRecords(DecodedRecords records, Faults faults)
    {
        var count = records.Kinds.Length;
        var impossible = records.Impossible;
        if ((long)impossible.Count * 100 > (long)count * ImpossiblePercent)
        {
            var offset = Tape.ByteOffsetOf(impossible.First);
            faults.At(offset, ViolationCodes.ImpossibleRecords, Sentence.Of(
                $"Records with bits that no tape has: {impossible.Count} of {count}, the first at byte {offset}; this is another kind of file, or it was damaged on the way."));
        }

        if (!records.Kinds.AsSpan().Contains(RecordKind.Stitch))
        {
            faults.At(Tape.HeaderBytes, ViolationCodes.NoStitch, Sentence.Of(
                $"No record from byte {Tape.HeaderBytes} on is a stitch; records read: {count}."));
        }
    }

    private static Tape Assemble(ReadOnlySpan<byte> bytes, TapeBody body, DecodedRecords records, TapeReading settings)
    {
        var header = HeaderText.Read(bytes[..Tape.HeaderBytes]);
        var census = TapeCensus.Of(records, settings.TrimJumps);
        var quirks = new TapeQuirks(header, body, records, census).All();
        return new Tape(header, records.Kinds, records.X, records.Y, quirks) { Ending = body.Ending };
    }
}
