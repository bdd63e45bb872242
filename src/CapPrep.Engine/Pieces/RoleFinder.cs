using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Says what sections are there for. It looks at a section and its cover, not at its neighbors in time.</summary>
internal static class RoleFinder
{
    /// <summary>From this share under cover on, percent, stitches are not meant to be seen.</summary>
    public const int HiddenFrom = 75;

    // A few rows, that could be a small area, from this share under cover of their own thread on.
    private const int BuriedFrom = 95;

    // A tie stays within 1.6 mm and is shorter than 6 mm.
    private const int TieReach = 16;
    private const int TieLength = 60 * Fine.PerTenth;

    /// <summary>Roles that need no owner; hidden lines are travel until <see cref="Owners"/> finds what they carry.</summary>
    public static void Assign(StitchSequence stitches, IReadOnlyList<Section> sections)
    {
        for (var i = 0; i < sections.Count; i++)
        {
            var section = sections[i];
            section.Role = section.IsClosed ? (IsBuried(section) ? SpanRole.Underlay : SpanRole.Visible)
                : IsTie(stitches, section) ? SpanRole.Tie
                : section.HiddenPercent >= HiddenFrom ? HiddenRole(section)
                : IsTravelOnTop(sections, i) ? SpanRole.TravelOnTop
                : SpanRole.Visible;
        }
    }

    private static bool IsBuried(Section section) => section.MayBeHidden && section.HiddenBySameThreadPercent >= BuriedFrom;

    private static SpanRole HiddenRole(Section section) =>
        section.Class == StitchClass.Running ? SpanRole.HiddenTravel : SpanRole.Underlay;

    private static bool IsTie(StitchSequence stitches, Section section) =>
        section.Class is StitchClass.Running or StitchClass.Retraced
        && Math.Max(section.Box.Width, section.Box.Height) <= TieReach
        && stitches.LengthOf(section.Interval) < TieLength;

    /// <summary>A line over stitches of its own thread that leads from one area to the next.</summary>
    private static bool IsTravelOnTop(IReadOnlyList<Section> sections, int index) =>
        sections[index].Class == StitchClass.Running
        && sections[index].OnTopPercent >= HiddenFrom
        && IsArea(sections, index - 1, sections[index].Strand)
        && IsArea(sections, index + 1, sections[index].Strand);

    private static bool IsArea(IReadOnlyList<Section> sections, int index, int strand) =>
        index >= 0 && index < sections.Count && sections[index].Strand == strand && sections[index].IsClosed;
}
