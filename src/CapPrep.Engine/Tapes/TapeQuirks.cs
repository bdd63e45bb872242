using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>Puts what the reader counted into words: one quirk per rule, in the order of <see cref="TapeRules"/>.</summary>
internal sealed class TapeQuirks(TapeHeader header, TapeBody body, DecodedRecords records, TapeCensus census)
{
    // House limit: beyond it the trim count of the machine and of the tape's maker may differ.
    private const int UnclearPercent = 20;

    public IReadOnlyList<TapeQuirk> All() =>
        [.. new[]
        {
            HeaderCounts(), HeaderExtents(), HeaderColors(),
            NoEnd(), PartRecord(), AfterEnd(),
            EmptyBlocks(), UnknownBits(),
            RepeatedPoints(), ZeroStitches(), TrimsUnclear(),
        }.OfType<TapeQuirk>()];

    /// <summary>Writers count with or without the end record: both are right.</summary>
    private TapeQuirk? HeaderCounts() =>
        header.Records is { } announced && (announced == body.Records || announced == body.Records + 1)
            ? null
            : Announcement(TapeRules.HeaderCounts, "Records", header.Records, body.Records);

    private TapeQuirk? HeaderColors() =>
        header.ColorStops == census.ColorStops
            ? null
            : Announcement(TapeRules.HeaderColors, "Color stops", header.ColorStops, census.ColorStops);

    private static TapeQuirk Announcement(string rule, string what, int? announced, int found) =>
        new(rule, 1, announced is { } number
            ? Sentence.Of($"{what} announced in the header: {number}; found: {found}.")
            : Sentence.Of($"{what} announced in the header: none; found: {found}."))
        {
            Measured = found,
            Announced = announced,
        };

    private TapeQuirk? HeaderExtents()
    {
        var wrong = Reaches().Where(reach => reach.IsWrong).ToList();
        if (wrong.Count == 0)
            return null;
        var worst = wrong.MaxBy(reach => reach.Error)!;
        var found = new Tenths(worst.Found).Millimeters;
        var announced = worst.Announced is { } units ? new Tenths(units).Millimeters : (double?)null;
        return new(TapeRules.HeaderExtents, wrong.Count, announced is null
            ? Sentence.Of($"The header does not say how far the needle goes {worst.Side} the start; it goes {found:0.0} mm.")
            : Sentence.Of($"The header says the needle goes {announced:0.0} mm {worst.Side} the start; it goes {found:0.0} mm."))
        {
            Measured = found,
            Announced = announced,
        };
    }

    private Reach[] Reaches() =>
    [
        new("to the right of", header.PlusX, census.Needle.Right),
        new("to the left of", header.MinusX, -census.Needle.Left),
        new("above", header.PlusY, census.Needle.Top),
        new("below", header.MinusY, -census.Needle.Bottom),
    ];

    private TapeQuirk? NoEnd() => body.Ending.HasEndRecord
        ? null
        : new(TapeRules.NoEnd, 1, "The tape has no end record.") { ByteOffset = body.EndOffset };

    private TapeQuirk? PartRecord() => body.Ending.PartBytes == 0
        ? null
        : new(TapeRules.PartRecord, 1, Sentence.Of(
            $"The file ends inside a record: {body.Ending.PartBytes} of its 3 bytes are there."))
        {
            ByteOffset = body.EndOffset,
        };

    private TapeQuirk? AfterEnd()
    {
        var bytes = body.Ending.BytesAfterEnd;
        return bytes == 0
            ? null
            : new(TapeRules.AfterEnd, bytes, Sentence.Of($"Bytes behind the end record: {bytes}; they are not read."))
            {
                ByteOffset = body.EndOffset + Tape.RecordBytes,
            };
    }

    private TapeQuirk? EmptyBlocks() => Counted(
        TapeRules.EmptyBlock, census.EmptyBlocks, $"Color blocks without a stitch: {census.EmptyBlocks.Count}.");

    private TapeQuirk? UnknownBits() => Counted(
        TapeRules.UnknownBits, records.Unusual, $"Records with bits of no known meaning: {records.Unusual.Count} of {body.Records}.");

    private TapeQuirk? RepeatedPoints() => Counted(
        TapeRules.RepeatedPoints, census.RepeatedPoints, $"Stitches into a needle hole made before: {census.RepeatedPoints.Count} of {census.Stitches}.");

    private TapeQuirk? ZeroStitches() => Counted(
        TapeRules.ZeroStitches, census.ZeroStitches, $"Stitches without length: {census.ZeroStitches.Count}.");

    private TapeQuirk? TrimsUnclear() =>
        (long)census.LongFloats.Count * 100 <= (long)census.Floats * UnclearPercent
            ? null
            : Counted(
                TapeRules.TrimsUnclear,
                census.LongFloats,
                $"Short jump groups that go farther than 5 mm: {census.LongFloats.Count} of {census.Floats}; they may be meant as trims.");

    private static TapeQuirk? Counted(string rule, Tally tally, FormattableString sentence) => tally.Count == 0
        ? null
        : new(rule, tally.Count, Sentence.Of(sentence))
        {
            Record = tally.First,
            ByteOffset = Tape.ByteOffsetOf(tally.First),
        };

    /// <summary>
    /// One announced length against the needle's. Where the design lies wholly on the other side of the start, some
    /// writers announce 0 and some the negative length: both are right.
    /// </summary>
    private sealed record Reach(string Side, int? Announced, int Found)
    {
        public bool IsWrong => Announced != Found && Announced != HeaderText.Reach(Found);

        public long Error => Announced is { } announced ? Math.Abs((long)announced - Found) : long.MaxValue;
    }
}
