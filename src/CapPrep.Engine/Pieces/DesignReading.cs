namespace CapPrep.Engine.Pieces;

/// <summary>Why a design was read more coarsely than it is made.</summary>
public enum ReadingLimit
{
    /// <summary>The needle points reach farther than 400 mm: no area was looked for, every block is one element.</summary>
    TooWide,

    /// <summary>More than 6,000 strands: as <see cref="TooWide"/>.</summary>
    TooManyStrands,

    /// <summary>More changes of stitch character, covered cells or meeting areas than can be compared: as <see cref="TooWide"/>.</summary>
    TooMuchToCompare,

    /// <summary>More than 1,500 elements: neighbors in a strand were joined, nearest first.</summary>
    TooManyElements,

    /// <summary>More than 200 color blocks.</summary>
    TooManyBlocks,
}

/// <summary>A design as the sew order and the checks see it.</summary>
public sealed record DesignReading
{
    /// <summary>In received time order.</summary>
    public required IReadOnlyList<Element> Elements { get; init; }

    /// <summary>In received time order; elements of different strands have none between them.</summary>
    public required IReadOnlyList<Link> Links { get; init; }

    /// <summary>Sorted by the earlier, then the later element.</summary>
    public required IReadOnlyList<MustFollow> MustFollow { get; init; }

    /// <summary>Areas and visible lines, in received time order.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    /// <summary>Every penetration once, in received time order.</summary>
    public required IReadOnlyList<Span> Spans { get; init; }

    /// <summary>Share of the penetrations whose stitches have a class without doubt about what they are, 0 to 1.</summary>
    public required double AssignedShare { get; init; }

    /// <summary>Sorted; empty for every design that a cap can hold.</summary>
    public required IReadOnlyList<ReadingLimit> Limits { get; init; }

    /// <summary>The reading is fine enough for another order to be proposed.</summary>
    public bool OrderMayChange => Limits.All(limit => limit == ReadingLimit.TooManyElements);
}
