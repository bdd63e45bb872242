using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Tapes;

/// <summary>How the file around the stitches looks.</summary>
internal sealed record FileHabits
{
    /// <summary>Stitches that the header announces, as a share of those written.</summary>
    public double AnnouncedShare { get; init; } = 1;

    /// <summary>Color stops that the header announces beyond those written.</summary>
    public int AnnouncedExtraStops { get; init; }

    /// <summary>How far the header's extents lie beyond the true ones, tape units.</summary>
    public int ExtentsOff { get; init; }

    public bool EndRecord { get; init; } = true;

    /// <summary>Bytes of half a record behind the last whole one.</summary>
    public int StrayBytes { get; init; }

    /// <summary>Records behind the end record.</summary>
    public int AfterEnd { get; init; }

    /// <summary>The first color stop comes twice.</summary>
    public bool EmptyBlock { get; init; }

    /// <summary>Stitches that go nowhere, evenly spread.</summary>
    public int ZeroStitches { get; init; }

    /// <summary>Records with bits that no rule knows, evenly spread.</summary>
    public int UnknownBits { get; init; }

    /// <summary>The first way behind a trim or stop goes by way of this place, mm from where it begins.</summary>
    public Vec? Detour { get; init; }
}
