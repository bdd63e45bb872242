using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>What the reader counts to tell which quirks a tape has; one pass over the records.</summary>
internal sealed class TapeCensus
{
    private const int LongFloatUnits = 5 * Tenths.PerMillimeter;

    private Tally _zeroStitches = Tally.Empty;
    private Tally _longFloats = Tally.Empty;
    private Tally _emptyBlocks = Tally.Empty;

    /// <summary>Box of the penetrations.</summary>
    public Box Needle { get; private set; }

    public int Stitches { get; private set; }

    public int ColorStops { get; private set; }

    /// <summary>Connections by thread across at least one jump.</summary>
    public int Floats { get; private set; }

    /// <summary>Floats longer than 5 mm.</summary>
    public Tally LongFloats => _longFloats;

    /// <summary>Stitches into the hole of the stitch right before them.</summary>
    public Tally ZeroStitches => _zeroStitches;

    /// <summary>Color blocks without a penetration; the record is the stop beside it.</summary>
    public Tally EmptyBlocks => _emptyBlocks;

    /// <summary>Penetrations at a point that was penetrated before.</summary>
    public Tally RepeatedPoints { get; private set; } = Tally.Empty;

    /// <summary>Counts; the records hold at least one stitch.</summary>
    public static TapeCensus Of(DecodedRecords records, int trimJumps)
    {
        var census = new TapeCensus();
        census.Measure(records);
        census.Count(records, trimJumps);
        census.RepeatedPoints = NeedleHoles.Repeated(records, census.Needle, census.Stitches);
        return census;
    }

    private void Count(DecodedRecords records, int trimJumps)
    {
        var (kinds, xs, ys) = (records.Kinds, records.X, records.Y);
        var gap = default(Gap);
        var inGap = true;
        var inBlock = 0;
        for (var record = 0; record < kinds.Length; record++)
        {
            if (kinds[record] != RecordKind.Stitch)
            {
                gap.Add(kinds[record]);
                inGap = true;
                NoteBetween(kinds[record], record, ref inBlock);
                continue;
            }

            if (inGap)
            {
                NoteFloat(records, record, gap, trimJumps);
                (gap, inGap) = (default, false);
            }
            else if (xs[record] == xs[record - 1] && ys[record] == ys[record - 1])
            {
                _zeroStitches.Note(record);
            }

            inBlock++;
        }

        if (inBlock == 0 && ColorStops > 0)
            _emptyBlocks.Note(Array.LastIndexOf(kinds, RecordKind.ColorStop));
    }

    private void Measure(DecodedRecords records)
    {
        var (kinds, xs, ys) = (records.Kinds, records.X, records.Y);
        var (left, bottom, right, top) = (int.MaxValue, int.MaxValue, int.MinValue, int.MinValue);
        for (var record = 0; record < kinds.Length; record++)
        {
            if (kinds[record] != RecordKind.Stitch)
                continue;
            var (x, y) = (xs[record], ys[record]);
            (left, right) = (Math.Min(left, x), Math.Max(right, x));
            (bottom, top) = (Math.Min(bottom, y), Math.Max(top, y));
        }

        Needle = new(left, bottom, right, top);
        Stitches = kinds.AsSpan().Count(RecordKind.Stitch);
    }

    private void NoteBetween(RecordKind kind, int record, ref int inBlock)
    {
        if (kind != RecordKind.ColorStop)
            return;
        ColorStops++;
        if (inBlock == 0)
            _emptyBlocks.Note(record);
        inBlock = 0;
    }

    private void NoteFloat(DecodedRecords records, int record, in Gap gap, int trimJumps)
    {
        var before = record - gap.Jumps - 1;
        if (before < 0 || gap.Jumps == 0 || gap.RelationFor(trimJumps) != Relation.Thread)
            return;
        Floats++;
        long dx = records.X[record] - records.X[before], dy = records.Y[record] - records.Y[before];
        if ((dx * dx) + (dy * dy) > LongFloatUnits * LongFloatUnits)
            _longFloats.Note(record);
    }
}
