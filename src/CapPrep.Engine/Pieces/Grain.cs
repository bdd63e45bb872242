using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// Decides which neighbors in a strand move as one. Every decision looks at two neighbors as they are, never at what
/// was joined before, so it comes out the same when the strand is cut elsewhere.
/// </summary>
internal static class Grain
{
    /// <summary>Joins what must not be parted.</summary>
    public static StrandParts Joined(StitchSequence stitches, StrandParts strand) => Joined(stitches, strand, Joins(stitches, strand));

    /// <summary>Joins where a list says so; one entry for each joint.</summary>
    public static StrandParts Joined(StitchSequence stitches, StrandParts strand, IReadOnlyList<bool> joins)
    {
        if (!joins.Contains(true))
            return strand;
        var parts = new List<Part>();
        var joints = new List<Joint>();
        List<Section> sections = [.. strand.Parts[0].Sections];
        for (var k = 0; k < joins.Count; k++)
        {
            if (joins[k])
            {
                sections.AddRange(strand.Joints[k].Sections);
            }
            else
            {
                parts.Add(Painted(stitches, sections));
                joints.Add(strand.Joints[k]);
                sections = [];
            }

            sections.AddRange(strand.Parts[k + 1].Sections);
        }

        parts.Add(Painted(stitches, sections));
        return new(parts, joints);
    }

    private static Part Painted(StitchSequence stitches, IReadOnlyList<Section> sections)
    {
        var part = new Part(stitches, [.. sections]);
        part.Cover = stitches.CoverOf(part.Sections, part.Box);
        return part;
    }

    private static bool[] Joins(StitchSequence stitches, StrandParts strand)
    {
        var joins = new bool[strand.Joints.Count];
        for (var k = 0; k < joins.Length; k++)
            joins[k] = !strand.Joints[k].IsLoose || AreOneArea(strand.Parts[k], strand.Parts[k + 1]);
        for (var k = 0; k < strand.Parts.Count; k++)
        {
            if (strand.Parts[k].IsSmall && joins.Length > 0)
                joins[NearerJoint(stitches, strand, k)] = true;
        }

        return joins;
    }

    private static bool AreOneArea(Part one, Part other) =>
        Layers.MayChangePlaces(one, other) && one.Cover.Touches(other.Cover);

    /// <summary>The joint to the nearer neighbor, among equals to the next.</summary>
    private static int NearerJoint(StitchSequence stitches, StrandParts strand, int part) =>
        part == 0 ? 0
        : part == strand.Joints.Count || Way(stitches, strand, part - 1) < Way(stitches, strand, part) ? part - 1
        : part;

    private static long Way(StitchSequence stitches, StrandParts strand, int joint) => Fine.Square(
        stitches.At(strand.Parts[joint + 1].Interval.First) - stitches.At(strand.Parts[joint].Interval.Last));
}
