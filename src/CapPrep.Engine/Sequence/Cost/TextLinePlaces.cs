namespace CapPrep.Engine.Sequence.Cost;

/// <summary>An element of a text line and where it stands in it.</summary>
/// <param name="Element">Index of the element.</param>
/// <param name="FromSeam">Signed way along the base line from the point nearest to the seam, tape units.</param>
/// <param name="IsCenter">It is the middle letter and belongs to both halves.</param>
public sealed record LinePlace(int Element, int FromSeam, bool IsCenter);

/// <summary>The text lines of a design as far as the sew order is concerned.</summary>
/// <param name="Lines">No element stands in two.</param>
/// <param name="Tagline">Elements of the lowest small wide line, or of what stands for it; sorted.</param>
public sealed record TextLinePlaces(IReadOnlyList<IReadOnlyList<LinePlace>> Lines, IReadOnlyList<int> Tagline)
{
    public static readonly TextLinePlaces None = new([], []);
}
