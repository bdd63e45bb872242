using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Makes pieces of the sections that are parts of them.</summary>
internal sealed class PieceMaker(StitchSequence stitches)
{
    // A line between these shares under or over cover, percent, may be meant to be seen or not.
    private const int DoubtFrom = 60;
    private const int DoubtTo = 90;

    // A line of at least so many penetrations that turns at every second stitch is something that has no name yet.
    private const int LineToJudge = 20;

    /// <summary>Pieces in the order of their numbers.</summary>
    /// <param name="sections">All sections with their roles and pieces.</param>
    /// <param name="elementOf">Element of a penetration.</param>
    public IReadOnlyList<Piece> Make(IEnumerable<Section> sections, Func<int, int> elementOf) =>
        [.. sections
            .Where(section => section.Role == SpanRole.Visible)
            .GroupBy(section => section.Piece, (index, parts) => Make(index, [.. parts], elementOf))];

    private Piece Make(int index, IReadOnlyList<Section> sections, Func<int, int> elementOf)
    {
        var largest = sections.MaxBy(section => section.Cover.Area) ?? sections[0];
        var rows = sections.Where(section => section.IsClosed == largest.IsClosed).Select(section => section.Rows)
            .Aggregate((sum, next) => sum is null || next is null ? sum : sum.With(next));
        return new()
        {
            Index = index,
            Element = elementOf(sections[0].Interval.First),
            First = sections[0].Interval.First,
            Last = sections[^1].Interval.Last,
            Block = largest.Block,
            Class = largest.Class,
            Box = sections.Select(section => section.Box).Aggregate((sum, box) => sum.Union(box)),
            Rows = rows?.Rows ?? 0,
            WidthMm = Fine.Millimeters(rows?.Column ?? 0),
            PitchMm = Fine.Millimeters(rows?.Pitch ?? 0),
            ThreadPerAreaMm = ThreadPerArea(sections),
            Axis = rows?.Axis ?? Axis.None,
            Cover = Cover.Of(sections.Select(section => section.Cover)),
            Blanket = Cover.Of(sections.Select(section => section.Blanket)),
            RowsInOrder = [.. sections.SelectMany(RowsOf)],
            Sure = sections.All(section => !section.IsDoubtful)
                && (rows is null ? IsSureLine(sections) : Classifier.IsSure(rows) && !IsDoubtful(largest.HiddenPercent)),
        };
    }

    private static IEnumerable<Interval> RowsOf(Section section) =>
        section.Chain is { } chain ? chain.Rows.Select(row => new Interval(row.First, row.Last)) : [];

    private double ThreadPerArea(IReadOnlyList<Section> sections)
    {
        var cells = sections.Sum(section => (long)Math.Max(section.Blanket.Area, section.Cover.Area));
        var length = sections.Sum(section => stitches.LengthOf(section.Interval));
        return Fine.Millimeters(length) * Cover.CellsPerSquareMillimeter / cells;
    }

    private bool IsSureLine(IReadOnlyList<Section> sections) => sections.All(section =>
        !IsDoubtful(section.HiddenPercent) && !IsDoubtful(section.OnTopPercent) && !HasNoName(section));

    private static bool IsDoubtful(int percent) => percent is >= DoubtFrom and <= DoubtTo;

    private bool HasNoName(Section section) =>
        section.Class == StitchClass.Running
        && section.Interval.Count >= LineToJudge
        && 2 * StrokeCutter.Cut(stitches, section.Interval).Count > section.Interval.Count;
}
