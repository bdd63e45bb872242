using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>What is said of a tape that is out of bounds: its blocks, in the order received, without any cover.</summary>
internal static class CoarseReading
{
    public static DesignReading Of(StitchSequence stitches, IReadOnlyList<int> threadOfBlock, ReadingLimit limit)
    {
        var intervals = stitches.Blocks > ReadingBounds.Elements ? [new(0, stitches.Count - 1)] : Blocks(stitches);
        return new()
        {
            Elements = [.. intervals.Select((interval, index) => Element(stitches, threadOfBlock, interval, index))],
            Links = [],
            MustFollow = [.. Enumerable.Range(1, intervals.Count - 1)
                .Select(k => new MustFollow(k - 1, k, MustFollowReason.Overlap, 0))],
            Pieces = [],
            Spans = [.. intervals.Select((interval, index) =>
                new Span(interval.First, interval.Last, StitchClass.Running, SpanRole.Visible, null, index))],
            AssignedShare = 0,
            Limits = [limit],
        };
    }

    private static List<Interval> Blocks(StitchSequence stitches)
    {
        var blocks = new List<Interval>();
        var first = 0;
        for (var i = 1; i <= stitches.Count; i++)
        {
            if (i < stitches.Count && stitches.Block[i] == stitches.Block[first])
                continue;
            blocks.Add(new(first, i - 1));
            first = i;
        }

        return blocks;
    }

    private static Element Element(StitchSequence stitches, IReadOnlyList<int> threadOfBlock, Interval interval, int index) => new()
    {
        Index = index,
        First = interval.First,
        Last = interval.Last,
        Block = stitches.Block[interval.First],
        Thread = threadOfBlock[stitches.Block[interval.First] - 1],
        Kind = ElementKind.Running,
        Box = stitches.BoxOf(interval),
        Cover = Cover.None,
        Axis = Axis.None,
    };
}
