using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Keeps the number of elements within bounds by joining neighbors in a strand.</summary>
internal static class ElementCap
{
    /// <summary>
    /// The strands as they are when there are few enough parts, else with those neighbors joined whose common box is
    /// the least larger than their own. Strands themselves stay apart, so there may still be too many.
    /// </summary>
    public static IReadOnlyList<StrandParts> Within(StitchSequence stitches, IReadOnlyList<StrandParts> strands)
    {
        var tooMany = strands.Sum(strand => strand.Parts.Count) - ReadingBounds.Elements;
        if (tooMany <= 0)
            return strands;
        var joined = strands
            .SelectMany((strand, s) => strand.Joints.Select((_, k) => (Strand: s, Joint: k, Added: Added(strand.Parts[k], strand.Parts[k + 1]))))
            .OrderBy(joint => joint.Added).ThenBy(joint => joint.Strand).ThenBy(joint => joint.Joint)
            .Take(tooMany)
            .ToHashSet();
        return [.. strands.Select((strand, s) => Grain.Joined(
            stitches,
            strand,
            [.. strand.Joints.Select((_, k) => joined.Contains((s, k, Added(strand.Parts[k], strand.Parts[k + 1]))))]))];
    }

    private static long Added(Part one, Part other) => Size(one.Box.Union(other.Box)) - Size(one.Box) - Size(other.Box);

    private static long Size(Box box) => (long)box.Width * box.Height;
}
