namespace CapPrep.Engine.Pieces;

/// <summary>A design as the sew order sees it.</summary>
public sealed record Reading
{
    /// <summary>In received time order.</summary>
    public required IReadOnlyList<Element> Elements { get; init; }

    /// <summary>In received time order; elements of different strands have none between them.</summary>
    public required IReadOnlyList<Link> Links { get; init; }

    /// <summary>Sorted by the earlier, then the later element.</summary>
    public required IReadOnlyList<MustFollow> MustFollow { get; init; }
}
