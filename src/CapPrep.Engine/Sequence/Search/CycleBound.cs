namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// What no order of the items can cost less than: every pair the cheap way round (or as decided), and, for triples
/// whose cheap ways form a cycle, the cheapest turn that breaks it. Triples are packed greedily so that no turn is
/// counted twice.
/// </summary>
internal static class CycleBound
{
    // Packing looks at every triple; beyond so many items only the pairs are counted.
    private const int MostForTriples = 400;

    internal static long Of(LinearOrder problem)
    {
        var turns = problem.Turns();
        var pairs = CostOfPairs(problem);
        return problem.Count > MostForTriples ? pairs : pairs + Packed(turns, problem.Count);
    }

    private static long CostOfPairs(LinearOrder problem)
    {
        long sum = 0;
        for (var second = 0; second < problem.Count; second++)
        {
            for (var first = 0; first < second; first++)
            {
                sum += problem.Precedence.Orders(first, second) ? problem.Cost(first, second)
                    : problem.Precedence.Orders(second, first) ? problem.Cost(second, first)
                    : Math.Min(problem.Cost(first, second), problem.Cost(second, first));
            }
        }

        return sum;
    }

    private static long Packed(long[] turns, int count)
    {
        long sum = 0;
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                if (turns[(i * count) + j] == 0)
                    continue;
                for (var k = j + 1; k < count; k++)
                    sum += Break(turns, (i * count) + j, (j * count) + k, (k * count) + i)
                        + Break(turns, (i * count) + k, (k * count) + j, (j * count) + i);
            }
        }

        return sum;
    }

    /// <summary>Takes the cheapest turn of a cycle out of all three of its pairs.</summary>
    private static long Break(long[] turns, int one, int two, int three)
    {
        if (turns[one] <= 0 || turns[two] <= 0 || turns[three] <= 0)
            return 0;
        var least = Math.Min(turns[one], Math.Min(turns[two], turns[three]));
        Take(turns, one, least);
        Take(turns, two, least);
        Take(turns, three, least);
        return least;
    }

    private static void Take(long[] turns, int pair, long amount)
    {
        if (turns[pair] != LinearOrder.Decided)
            turns[pair] -= amount;
    }
}
