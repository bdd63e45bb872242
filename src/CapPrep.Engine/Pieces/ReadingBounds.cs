namespace CapPrep.Engine.Pieces;

/// <summary>How much a reading may hold, so that no tape can make it slow or large (house).</summary>
internal static class ReadingBounds
{
    /// <summary>Longest side of the box of all penetrations, tape units; no cap frame reaches 400 mm.</summary>
    public const int Side = 4_000;

    public const int Strands = 6_000;

    public const int Sections = 10_000;

    public const int Elements = 1_500;

    /// <summary>Words of 64 cells in the covers of all sections: 32 MB.</summary>
    public const long CoverWords = 4_000_000;

    /// <summary>Meetings of hidden stitches with areas that are compared.</summary>
    public const int Meetings = 300_000;

    /// <summary>Pairs of elements and ways that are compared.</summary>
    public const long PairTests = 2_000_000;

    /// <summary>Color blocks whose order is searched.</summary>
    public const int Blocks = 200;
}
