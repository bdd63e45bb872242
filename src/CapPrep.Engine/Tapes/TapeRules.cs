namespace CapPrep.Engine.Tapes;

/// <summary>Ids of the rules that report what is odd about a tape; the order here is the order of the quirks.</summary>
public static class TapeRules
{
    public const string HeaderCounts = "tape.header-counts";
    public const string HeaderExtents = "tape.header-extents";
    public const string HeaderColors = "tape.header-colors";
    public const string NoEnd = "tape.no-end";
    public const string PartRecord = "tape.part-record";
    public const string AfterEnd = "tape.after-end";
    public const string EmptyBlock = "tape.empty-block";
    public const string UnknownBits = "tape.unknown-bits";
    public const string RepeatedPoints = "tape.repeated-points";
    public const string ZeroStitches = "tape.zero-stitches";
    public const string TrimsUnclear = "tape.trims-unclear";

    /// <summary>Rules about the container; a tape from <see cref="TapeWriter"/> never shows one.</summary>
    public static IReadOnlyList<string> OfContainer { get; } =
        [HeaderCounts, HeaderExtents, HeaderColors, NoEnd, PartRecord, AfterEnd, EmptyBlock, UnknownBits];
}
