using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>Short stitches where a strand begins and ends (fact row L44).</summary>
internal static class Ties
{
    internal static List<PartDot> In(List<PartDot> dots, Habits habits)
    {
        if (!habits.Ties)
            return dots;
        var tied = new List<PartDot>(dots.Count);
        for (var k = 0; k < dots.Count; k++)
        {
            tied.Add(dots[k]);
            var begins = k == 0 || IsCut(dots[k].Dot.Joint);
            var ends = k + 1 == dots.Count || IsCut(dots[k + 1].Dot.Joint);
            if (begins && !ends)
                tied.AddRange(Tie(dots[k], dots[k + 1].Dot.At, habits, isEnd: false));
            else if (ends && !begins)
                tied.AddRange(Tie(dots[k], dots[k - 1].Dot.At, habits, isEnd: true));
        }

        return tied;
    }

    internal static bool IsCut(Joint joint) => joint is Joint.Trim or Joint.Stop;

    /// <summary>To and fro toward a neighboring stitch, so that it lies where thread lies anyway.</summary>
    private static IEnumerable<PartDot> Tie(PartDot end, Vec toward, Habits habits, bool isEnd)
    {
        var step = (toward - end.Dot.At).Unit * habits.TieStitch;
        var count = isEnd ? habits.TieStitches : (habits.TieStitches + 1) / 2 * 2;
        return Enumerable.Range(1, count).Select(k => end with
        {
            Dot = new Dot(end.Dot.At + (k % 2 == 1 ? step : new Vec(0, 0)), end.Dot.As, Purpose.Tie),
        });
    }
}
