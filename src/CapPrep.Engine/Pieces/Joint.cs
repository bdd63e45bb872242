using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>What connects two parts that follow each other in a strand: sections of its own, or a single stitch.</summary>
/// <param name="Sections">May be none.</param>
/// <param name="IsLoose">It may be dropped and leaves nothing to be seen.</param>
internal sealed record Joint(IReadOnlyList<Section> Sections, bool IsLoose)
{
    // From this share under later cover of the same thread on, percent, nobody misses a way.
    private const int HiddenFrom = 95;

    // A stitch up to 1 mm between two areas is not seen; one over 7 mm is no stitch of a line. Squares, tape units.
    private const int ShortStitchSquare = 10 * 10;
    private const int LongStitchSquare = 70 * 70;

    public static Joint Between(StitchSequence stitches, Section before, IReadOnlyList<Section> sections, Section after) =>
        new(sections, sections.Count == 0 ? !IsStitchOfLine(stitches, before, after) : AreHidden(sections));

    private static bool AreHidden(IReadOnlyList<Section> sections) =>
        sections.All(section => section.Class is StitchClass.Running or StitchClass.Retraced
            && section.Role != SpanRole.TravelOnTop)
        && sections.Sum(section => (long)section.HiddenBySameThreadPercent * section.Cover.Area)
            >= HiddenFrom * sections.Sum(section => (long)section.Cover.Area);

    /// <summary>The stitch from one section to the other is the first or last one of a visible line.</summary>
    private static bool IsStitchOfLine(StitchSequence stitches, Section before, Section after)
    {
        var step = Fine.Square(stitches.At(after.Interval.First) - stitches.At(before.Interval.Last));
        return (IsLine(before) || IsLine(after))
            && stitches.Jumps[after.Interval.First] == 0
            && step is > ShortStitchSquare and <= LongStitchSquare;
    }

    private static bool IsLine(Section section) =>
        section is { Class: StitchClass.Running, Role: SpanRole.Visible };
}
