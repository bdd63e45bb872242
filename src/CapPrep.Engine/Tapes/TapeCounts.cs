namespace CapPrep.Engine.Tapes;

/// <summary>Counts what a tape holds.</summary>
public static class TapeCounts
{
    /// <param name="tape">The tape as read.</param>
    /// <param name="trimJumps">Consecutive jump records that mean a trim, at least 1; a setting of the machine.</param>
    public static TapeFacts Of(Tape tape, int trimJumps) => Of(tape, StitchSequence.Of(tape, trimJumps));

    /// <param name="tape">The tape as read.</param>
    /// <param name="stitches">Its penetrations.</param>
    public static TapeFacts Of(Tape tape, StitchSequence stitches)
    {
        var trims = stitches.Relations.Count(Relation.Cut);
        var stops = stitches.Relations.Count(Relation.Stop);
        return new(
            Records: tape.RecordCount,
            Stitches: stitches.Count,
            Jumps: tape.Kinds.Count(RecordKind.Jump),
            Trims: trims,
            ColorStops: tape.Kinds.Count(RecordKind.ColorStop),
            Blocks: stitches.Blocks,
            Strands: 1 + trims + stops,
            Extents: stitches.Extents());
    }
}
