using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence;

/// <summary>Counts what the order of sewing on a tape costs.</summary>
internal static class OrderCounts
{
    internal static OrderFacts Of(StitchSequence stitches)
    {
        double travel = 0;
        for (var i = 1; i < stitches.Count; i++)
        {
            if (stitches.Jumps[i] > 0 || stitches.Relations[i] != Relation.Thread)
                travel += Length(stitches.At(i) - stitches.At(i - 1));
        }

        return new OrderFacts(
            ColorChanges: stitches.Relations.Count(Relation.Stop),
            Trims: stitches.Relations.Count(Relation.Cut),
            TravelMm: Math.Round(travel / Tenths.PerMillimeter, 3, MidpointRounding.AwayFromZero));
    }

    private static double Length(TapePoint way) => Math.Sqrt(((double)way.X * way.X) + ((double)way.Y * way.Y));
}
