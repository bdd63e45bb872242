using CapPrep.Engine.Pieces.Lines;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// Cuts a strand where the character of its stitches changes. A penetration that two neighbors could claim belongs to
/// closed stitches before open ones, to rows before a line, and among equals to the later one.
/// </summary>
internal sealed class SectionCutter(StitchSequence stitches)
{
    // Closed rows of fewer than these can be a part of a pattern.
    private const int FewRows = 12;

    private readonly List<Section> _sections = [];

    /// <summary>The sections of all strands in time order.</summary>
    public static List<Section> Cut(StitchSequence stitches, IReadOnlyList<Interval> strands)
    {
        var cutter = new SectionCutter(stitches);
        for (var strand = 0; strand < strands.Count; strand++)
            cutter.Cut(strand, strands[strand]);
        return cutter._sections;
    }

    private void Cut(int strand, Interval whole)
    {
        var rows = new List<(Interval Interval, StitchClass Class, Chain Chain)>();
        foreach (var chain in Chain.Among(StrokeCutter.Cut(stitches, whole)))
            Put(rows, Part(chain));
        var next = whole.First;
        foreach (var section in WithPatterns(strand, whole, [.. rows.Select(part => new Section(stitches, strand, part.Interval, part.Class, part.Chain))]))
        {
            Run(strand, next, section.Interval.First - 1);
            _sections.Add(section);
            next = section.Interval.Last + 1;
        }

        Run(strand, next, whole.Last);
    }

    /// <summary>The rows of a strand with the repeat patterns between long ones; a pattern takes the rows it is made of.</summary>
    private List<Section> WithPatterns(int strand, Interval whole, List<Section> rows)
    {
        var found = new List<Section>();
        var (next, waiting) = (whole.First, new List<Section>());
        foreach (var section in rows)
        {
            if (!IsLong(section))
            {
                waiting.Add(section);
                continue;
            }

            found.AddRange(WithPatternsIn(strand, new(next, section.Interval.First - 1), waiting));
            found.Add(section);
            (next, waiting) = (section.Interval.Last + 1, []);
        }

        found.AddRange(WithPatternsIn(strand, new(next, whole.Last), waiting));
        return found;
    }

    private static bool IsLong(Section rows) => rows is { IsClosed: true, Rows: { Rows: >= FewRows, IsTurning: false } };

    private IEnumerable<Section> WithPatternsIn(int strand, Interval open, List<Section> rows)
    {
        var patterns = new List<Section>();
        foreach (var pattern in PatternFinder.Among(stitches, open))
        {
            var interval = rows.Aggregate(pattern.Interval, Beside);
            if (patterns is [.., var before] && interval.First <= before.Interval.Last)
                interval = interval with { First = before.Interval.Last + 1 };
            if (interval.Count >= PatternFinder.FewestStitches && !IsMadeOfRows(interval, rows))
                patterns.Add(new(stitches, strand, interval, StitchClass.Pattern, null) { IsDoubtful = !pattern.IsSure });
        }

        return rows
            .Where(section => !patterns.Exists(pattern => pattern.Interval.Meets(section.Interval)))
            .Concat(patterns)
            .OrderBy(section => section.Interval.First);
    }

    /// <summary>Beads and nets of rows repeat as well.</summary>
    private static bool IsMadeOfRows(Interval interval, List<Section> rows) =>
        2 * rows.Where(section => section.Interval.Meets(interval) && section.Rows is { IsTurning: false }).Sum(section => section.Interval.Count) > interval.Count;

    /// <summary>A pattern with rows that lie in it for the most part, without those that do not.</summary>
    private static Interval Beside(Interval pattern, Section section)
    {
        var rows = section.Interval;
        var inside = Math.Min(pattern.Last, rows.Last) - Math.Max(pattern.First, rows.First) + 1;
        return inside <= 0 ? pattern
            : 2 * inside >= rows.Count ? new(Math.Min(pattern.First, rows.First), Math.Max(pattern.Last, rows.Last))
            : rows.First < pattern.First ? pattern with { First = rows.Last + 1 }
            : pattern with { Last = rows.First - 1 };
    }

    private static (Interval Interval, StitchClass Class, Chain Chain) Part(Chain chain)
    {
        var rows = ChainMeasures.Of(chain);
        return (WithoutTails(chain, rows), Classifier.ClassOf(rows), chain);
    }

    /// <summary>
    /// First and last row may go on into a line that leads on in the same direction; single stitches end where the
    /// first stitch does.
    /// </summary>
    private static Interval WithoutTails(Chain chain, ChainMeasures rows)
    {
        var (first, last) = (chain.Rows[0], chain.Rows[^1]);
        var single = 4L * rows.RowStitches < 5L * rows.Rows;
        return new(
            single && IsLong(first, rows) ? first.Last - 1 : first.First,
            single && IsLong(last, rows) ? last.First + 1 : last.Last);
    }

    private static bool IsLong(in Stroke row, ChainMeasures rows) => row.Stitches > 1 && 2 * row.Length > 3L * rows.Width;

    private static void Put(
        List<(Interval Interval, StitchClass Class, Chain Chain)> parts,
        (Interval Interval, StitchClass Class, Chain Chain) part)
    {
        if (parts is [.., var before] && part.Interval.First <= before.Interval.Last)
        {
            if (Rank(before.Class) > Rank(part.Class))
                part.Interval = part.Interval with { First = before.Interval.Last + 1 };
            else
                parts[^1] = before with { Interval = before.Interval with { Last = part.Interval.First - 1 } };
        }

        parts.Add(part);
    }

    private static int Rank(StitchClass @class) => @class is StitchClass.Satin or StitchClass.Fill ? 2 : 1;

    /// <summary>What lies between rows: lines, cut at every float.</summary>
    private void Run(int strand, int first, int last)
    {
        for (var i = first; i <= last; i++)
        {
            if (i < last && !stitches.IsFloat(i + 1))
                continue;
            _sections.Add(new(stitches, strand, new(first, i), StitchClass.Running, null));
            first = i + 1;
        }
    }
}
