using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering.Search;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Measures the letters of a line.</summary>
internal sealed class GlyphMaker(DesignReading reading)
{
    public Glyph Of(Letter letter, int index)
    {
        Interval[] strokes = [.. Joined(letter.Group.Limbs.SelectMany(limb => limb.Limb.Stitches))];
        return new()
        {
            Index = index,
            Box = letter.Group.Limbs.Select(limb => limb.Limb.Box).Aggregate((sum, box) => sum.Union(box)),
            FromMm = Fine.Millimeters(letter.Group.Reach.From),
            ToMm = Fine.Millimeters(letter.Group.Reach.To),
            HeightMm = Fine.Millimeters(letter.Top),
            StrokeWidthMm = Fine.Millimeters(Median.Of([.. letter.Group.Limbs.Select(limb => limb.Limb.Width)])),
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
