using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Measures the letters of a line.</summary>
internal sealed class GlyphMaker(DesignReading reading)
{
    /// <param name="letter">The letter.</param>
    /// <param name="index">Its place in the line.</param>
    /// <param name="threads">Its stitches.</param>
    /// <param name="gap">Bare cloth to the next letter, mm.</param>
    public Glyph Of(Letter letter, int index, IReadOnlyList<Stretch> threads, double? gap)
    {
        var box = letter.Group.Limbs.Select(limb => limb.Limb.Box).Aggregate((sum, next) => sum.Union(next));
        var width = Median.Of([.. letter.Group.Limbs.Select(limb => limb.Limb.Width)]);
        Interval[] strokes = [.. Joined(letter.Group.Limbs.SelectMany(limb => limb.Limb.Stitches))];
        return new()
        {
            Index = index,
            Box = box,
            FromMm = Fine.Millimeters(letter.Group.Reach.From),
            ToMm = Fine.Millimeters(letter.Group.Reach.To),
            HeightMm = Fine.Millimeters(letter.Top),
            StrokeWidthMm = Fine.Millimeters(width),
            CounterMm = Openings.Smallest(threads, threads.Select(thread => Box.Of(thread.From).Union(thread.To)).Aggregate(box, (sum, next) => sum.Union(next)), isFilled: width > 0),
            GapMm = gap,
            Strokes = [.. strokes.Select(stroke => new StitchRange(stroke.First, stroke.Last))],
            Elements = [.. strokes.SelectMany(ElementsOf).Distinct().Order()],
        };
    }

    /// <summary>Intervals that meet or overlap as one.</summary>
    private static IEnumerable<Interval> Joined(IEnumerable<Interval> intervals)
    {
        Interval? open = null;
        foreach (var next in intervals.OrderBy(interval => interval.First).ThenBy(interval => interval.Last))
        {
            if (open is { } before && next.First <= before.Last + 1)
            {
                open = before with { Last = Math.Max(before.Last, next.Last) };
                continue;
            }

            if (open is { } done)
                yield return done;
            open = next;
        }

        if (open is { } last)
            yield return last;
    }

    private IEnumerable<int> ElementsOf(Interval stroke) => reading.Elements
        .Where(element => element.First <= stroke.Last && element.Last >= stroke.First)
        .Select(element => element.Index);
}
