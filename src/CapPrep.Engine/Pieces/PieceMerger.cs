using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// Joins closed sections that are one area: next to each other in a strand with nothing visible between them but a
/// few stitches, touching, and alike.
/// </summary>
internal static class PieceMerger
{
    // A visible line of fewer penetrations than this does not part an area.
    private const int FewPenetrations = 8;

    // Rows that show how wide a column begins and ends.
    private const int EndRows = 5;

    /// <summary>Numbers the pieces and marks their sections; a section that is no area becomes a piece of its own.</summary>
    /// <param name="sections">All sections in time order, with their roles.</param>
    /// <returns>How many pieces there are.</returns>
    public static int Merge(IReadOnlyList<Section> sections)
    {
        var pieces = 0;
        var last = -1;
        for (var i = 0; i < sections.Count; i++)
        {
            if (sections[i].Role != SpanRole.Visible)
                continue;
            if (last >= 0 && sections[i].IsClosed && IsOneArea(sections[last], sections[i]))
                Join(sections, last, i);
            else
                sections[i].Piece = pieces++;
            if (sections[i].IsClosed)
                last = i;
            else if (sections[i].Interval.Count >= FewPenetrations)
                last = -1;
        }

        return Renumbered(sections);
    }

    /// <summary>Two closed sections are parts of one area.</summary>
    private static bool IsOneArea(Section one, Section other) =>
        one.Strand == other.Strand
        && (one.Rings is not null
            ? ReferenceEquals(one.Rings, other.Rings)
            : one.Rows is { } rows && other.Rows is { } next
                && (AreAlike(one.Class, rows, other.Class, next) || IsOneColumn(one, other))
                && one.Blanket.Touches(other.Blanket));

    private static bool AreAlike(StitchClass @class, ChainMeasures rows, StitchClass nextClass, ChainMeasures next) =>
        (@class, nextClass) switch
        {
            (StitchClass.Satin, StitchClass.Satin) => IsRatio(rows.Width, next.Width, 50, 200),
            (StitchClass.Fill, StitchClass.Fill) => rows.Axis.IsWithin10Degrees(next.Axis) && IsRatio(rows.Pitch, next.Pitch, 65, 150),
            _ => rows.Axis.IsWithin10Degrees(next.Axis),
        };

    /// <summary>The other goes on at once, as wide as the first one ends.</summary>
    private static bool IsOneColumn(Section one, Section other) =>
        one.Interval.Last + 1 == other.Interval.First
        && one is { Class: StitchClass.Satin, Chain: { } chain } && other is { Class: StitchClass.Satin, Chain: { } next }
        && IsRatio(
            Median.Of([.. chain.Rows.TakeLast(EndRows).Select(row => (int)row.Length)]),
            Median.Of([.. next.Rows.Take(EndRows).Select(row => (int)row.Length)]),
            60,
            167);

    private static bool IsRatio(long one, long other, int least, int most) =>
        100 * one >= least * other && 100 * one <= most * other;

    private static void Join(IReadOnlyList<Section> sections, int from, int to)
    {
        for (var i = from + 1; i <= to; i++)
            sections[i].Piece = sections[from].Piece;
    }

    /// <summary>Numbers without holes: a few stitches inside an area were counted before they were joined.</summary>
    private static int Renumbered(IReadOnlyList<Section> sections)
    {
        var (number, known) = (-1, -1);
        foreach (var section in sections.Where(section => section.Piece >= 0))
        {
            if (section.Piece != known)
                (known, number) = (section.Piece, number + 1);
            section.Piece = number;
        }

        return number + 1;
    }
}
