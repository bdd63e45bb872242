using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Polish;

/// <summary>Shortens the ways with the needle up.</summary>
internal sealed class TravelGoal(PlanningTable table) : IPolishGoal
{
    // Lengths are kept whole, in 1/16 of a tape unit.
    private const int Fine = 16;

    public bool Gains(int[] order, int from, int middle, int to) =>
        Way(order, from - 1, middle) + Way(order, to - 1, from) + Way(order, middle - 1, to)
        < Way(order, from - 1, from) + Way(order, middle - 1, middle) + Way(order, to - 1, to);

    public void Accept(int[] order, int from, int middle, int to)
    {
    }

    /// <summary>Way with the needle up between the elements of an order, mm to three decimals.</summary>
    internal static double LengthMm(PlanningTable table, IReadOnlyList<int> order)
    {
        var goal = new TravelGoal(table);
        int[] places = [.. order];
        long sum = 0;
        for (var at = 1; at < places.Length; at++)
            sum += goal.Way(places, at - 1, at);
        return Math.Round((double)sum / (Fine * Tenths.PerMillimeter), 3, MidpointRounding.AwayFromZero);
    }

    private long Way(int[] order, int first, int second)
    {
        if (first < 0 || second == order.Length)
            return 0;
        var (before, after) = (table.Elements[order[first]], table.Elements[order[second]]);
        if (table.Blocks[before.Index] == table.Blocks[after.Index] && table.Behind[(before.Index * table.Count) + after.Index] == Adjacency.Joined)
            return 0;
        var way = table.Request.Stitches.At(after.First) - table.Request.Stitches.At(before.Last);
        return (long)Math.Sqrt((double)Fine * Fine * (((long)way.X * way.X) + ((long)way.Y * way.Y)));
    }
}
