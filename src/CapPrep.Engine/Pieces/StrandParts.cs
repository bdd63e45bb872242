using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>One strand as part, joint, part, ..., part.</summary>
/// <param name="Parts">At least one.</param>
/// <param name="Joints">One fewer than parts.</param>
internal sealed record StrandParts(IReadOnlyList<Part> Parts, IReadOnlyList<Joint> Joints)
{
    // A tie this near to where an area ends belongs to it, tape units.
    private const int TieDistance = 16;

    /// <summary>
    /// Every area and every visible line is the core of a part. Underlay goes with the area behind it when that is the
    /// one it carries, else it is a part of its own; ties go with the area they are at; the rest is joint.
    /// </summary>
    /// <param name="stitches">The stitches.</param>
    /// <param name="sections">All sections of the strand, with their roles and owners.</param>
    public static StrandParts Of(StitchSequence stitches, IReadOnlyList<Section> sections)
    {
        var cores = Cores(sections);
        var parts = new List<Part>();
        var joints = new List<Joint>();
        var first = 0;
        for (var core = 0; core < cores.Count; core++)
        {
            if (core == cores.Count - 1)
            {
                parts.Add(new(stitches, Sections(sections, first, sections.Count - 1)));
                break;
            }

            var (leave, enter) = Gap(stitches, sections, cores[core].Last, cores[core + 1].First);
            parts.Add(new(stitches, Sections(sections, first, leave)));
            joints.Add(Joint.Between(stitches, sections[leave], Sections(sections, leave + 1, enter - 1), sections[enter]));
            first = enter;
        }

        return new(parts, joints);
    }

    private static List<Section> Sections(IReadOnlyList<Section> sections, int first, int last) =>
        [.. sections.Skip(first).Take(last - first + 1)];

    private static List<Interval> Cores(IReadOnlyList<Section> sections)
    {
        var cores = new List<Interval>();
        for (var i = 0; i < sections.Count; i++)
        {
            var last = sections[i].Role == SpanRole.Visible ? LastOfPiece(sections, i)
                : IsForeign(sections, i) ? LastOfForeign(sections, i)
                : -1;
            if (last < 0)
                continue;
            cores.Add(new(i, last));
            i = last;
        }

        return cores.Count > 0 ? cores : [new(0, sections.Count - 1)];
    }

    private static int LastOfPiece(IReadOnlyList<Section> sections, int first)
    {
        var last = first;
        for (var i = first + 1; i < sections.Count && IsBefore(sections[i], sections[first].Piece); i++)
        {
            if (sections[i].Role == SpanRole.Visible)
                last = i;
        }

        return last;
    }

    private static bool IsBefore(Section section, int piece) => section.Role != SpanRole.Visible || section.Piece == piece;

    /// <summary>Underlay of something else than what is sewn next in the strand.</summary>
    private static bool IsForeign(IReadOnlyList<Section> sections, int index)
    {
        if (sections[index].Role != SpanRole.Underlay)
            return false;
        for (var i = index + 1; i < sections.Count; i++)
        {
            if (sections[i].Role == SpanRole.Visible)
                return sections[i].Piece != sections[index].Piece;
        }

        return true;
    }

    private static int LastOfForeign(IReadOnlyList<Section> sections, int first)
    {
        var last = first;
        for (var i = first + 1; i < sections.Count && sections[i].Role != SpanRole.Visible; i++)
        {
            if (IsForeign(sections, i))
                last = i;
        }

        return last;
    }

    /// <summary>Last section that goes with the core before a gap, first one that goes with the core behind it.</summary>
    private static (int Leave, int Enter) Gap(
        StitchSequence stitches, IReadOnlyList<Section> sections, int before, int behind)
    {
        var enter = before + 1;
        while (enter < behind && sections[enter].Role != SpanRole.Underlay)
            enter++;
        var leave = before;
        while (leave + 1 < enter && IsTieAt(stitches, sections[leave + 1], sections[leave].Interval.Last))
            leave++;
        while (enter - 1 > leave && IsTieAt(stitches, sections[enter - 1], sections[enter].Interval.First))
            enter--;
        return (leave, enter);
    }

    private static bool IsTieAt(StitchSequence stitches, Section section, int penetration)
    {
        var end = stitches.At(penetration);
        return section.Role == SpanRole.Tie
            && section.Box.Left - TieDistance <= end.X && end.X <= section.Box.Right + TieDistance
            && section.Box.Bottom - TieDistance <= end.Y && end.Y <= section.Box.Top + TieDistance;
    }
}
