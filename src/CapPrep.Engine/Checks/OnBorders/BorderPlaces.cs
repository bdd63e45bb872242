using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>Where a border lies.</summary>
internal static class BorderPlaces
{
    /// <summary>Around all parts, with the stitches of the largest of them: they need not follow each other.</summary>
    /// <param name="subject">A seated design.</param>
    /// <param name="parts">At least one.</param>
    internal static Place Of(Subject subject, IReadOnlyList<Piece> parts)
    {
        var largest = parts.MaxBy(part => part.Last - part.First)!;
        return subject.PlaceOf(largest.First, largest.Last) with
        {
            BoxMm = parts.Select(part => subject.Points.BoxOf(part.First, part.Last)).Aggregate((one, other) => one.Union(other)).ToMillimeters(),
            Elements = [.. parts.Select(part => part.Element + 1).Distinct().Order()],
        };
    }
}
