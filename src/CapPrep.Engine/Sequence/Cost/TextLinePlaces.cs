namespace CapPrep.Engine.Sequence.Cost;

/// <summary>A letter of a text line: the element it is sewn in and where it stands.</summary>
/// <param name="Element">Index of the element.</param>
/// <param name="FromSeam">Signed way along the base line from the point nearest to the seam, tape units.</param>
/// <param name="IsCenter">It is the middle letter and belongs to both halves.</param>
public sealed record LinePlace(int Element, int FromSeam, bool IsCenter)
{
    /// <summary>First penetration of the letter: its place within an element that holds several.</summary>
    public int First { get; init; }

    /// <summary>Number of the word it belongs to, from 0 in reading order.</summary>
    public int Word { get; init; }
}

/// <summary>The text lines of a design as far as the sew order is concerned.</summary>
/// <param name="Lines">One for every text line, from the lowest up, then one for every row of letters without one; no element stands in two. None where letters may be sewn in any order.</param>
/// <param name="Tagline">Elements of the lowest small wide line, or of what stands for it; sorted.</param>
public sealed record TextLinePlaces(IReadOnlyList<IReadOnlyList<LinePlace>> Lines, IReadOnlyList<int> Tagline)
{
    /// <summary>Elements that lie where the tagline does and may come before it, sorted.</summary>
    public IReadOnlyList<int> TaglineGround { get; init; } = [];

    /// <summary>No letters were read one by one, and none of the rows is the tagline: a straight group may stand for it.</summary>
    public bool TaglineIsOpen { get; init; }

    public static readonly TextLinePlaces None = new([], []);

    /// <summary>
    /// Elements of one line that follow each other without a trim and stay in their order: small letters are not cut
    /// apart within a word. Sorted.
    /// </summary>
    public IReadOnlyList<(int Before, int After)> Held { get; init; } = [];

    /// <summary>Indices of the lines that should be sewn from the middle outward; the others may be sewn as they like.</summary>
    public IReadOnlyList<int> Judged { get; init; } = [];
}
