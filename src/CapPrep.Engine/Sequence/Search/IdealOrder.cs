namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// The best order by dynamic programming over ideals: the least cost to go from every set of items already sewn.
/// Source of the method: E. L. Lawler, "A comment on minimum feedback arc sets" (1964).
/// </summary>
internal static class IdealOrder
{
    /// <summary>The least cost, and the order that has it and comes first item by item.</summary>
    internal static (long Cost, int[] Order) Of(LinearOrder problem, Ideals ideals)
    {
        var stepCosts = ideals.CostOfSteps(problem);
        var toGo = CostToGo(ideals, stepCosts);
        var order = new int[problem.Count];
        var ideal = 0;
        for (var at = 0; at < order.Length; at++)
        {
            var step = ideals.FirstStep(ideal);
            while (stepCosts[step] + toGo[ideals.Target(step)] != toGo[ideal])
                step++;
            order[at] = ideals.Item(step);
            ideal = ideals.Target(step);
        }

        return (toGo[0], order);
    }

    private static long[] CostToGo(Ideals ideals, long[] stepCosts)
    {
        var toGo = new long[ideals.Count];
        for (var ideal = ideals.Count - 2; ideal >= 0; ideal--)
        {
            toGo[ideal] = long.MaxValue;
            for (var step = ideals.FirstStep(ideal); step < ideals.FirstStep(ideal + 1); step++)
                toGo[ideal] = Math.Min(toGo[ideal], stepCosts[step] + toGo[ideals.Target(step)]);
        }

        return toGo;
    }
}
