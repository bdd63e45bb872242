using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// Cuts a strand where the character of its stitches changes. A penetration that two neighbors could claim belongs to
/// closed stitches before open ones, to rows before a line, and among equals to the later one.
/// </summary>
internal sealed class SectionCutter(StitchSequence stitches)
{
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
        var parts = new List<(Interval Interval, StitchClass Class, Chain Chain)>();
        foreach (var chain in Chain.Among(StrokeCutter.Cut(stitches, whole)))
            Put(parts, Part(chain));
        var next = whole.First;
        foreach (var (interval, @class, chain) in parts)
        {
            Run(strand, next, interval.First - 1);
            _sections.Add(new(stitches, strand, interval, @class, chain));
            next = interval.Last + 1;
        }

        Run(strand, next, whole.Last);
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
