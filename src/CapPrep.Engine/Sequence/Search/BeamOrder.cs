namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// An order built from the front by keeping, of each length, only the cheapest ways to begin; of ways that sew the same
/// items and end with the same one, the cheapest alone. It is the exact way over ideals with most of it left out, good
/// where much is decided. Source of the method: L. Libralesso and others, "Tree search for the sequential ordering
/// problem" (2020).
/// </summary>
internal sealed class BeamOrder
{
    private static readonly ulong Purpose = Fnv1a.Of("beam"u8);

    private readonly BlockProblem _problem;
    private readonly long _price;
    private readonly ulong[] _marks;

    private BeamOrder(BlockProblem problem, long price)
    {
        (_problem, _price) = (problem, price);
        var chance = new SplitMix64(Fnv1a.Of(problem.Order.Seed, Purpose));
        _marks = [.. Enumerable.Range(0, problem.Count).Select(_ => chance.Next())];
    }

    /// <summary>The order found; null when none of the ways kept can be sewn to its end.</summary>
    /// <param name="problem">What is ordered.</param>
    /// <param name="price">What a trim costs.</param>
    /// <param name="width">Ways kept of each length.</param>
    internal static int[]? Of(BlockProblem problem, long price, int width)
    {
        var beam = new BeamOrder(problem, price);
        Way[] ways = [Way.Empty(problem.Count)];
        for (var length = 0; length < problem.Count; length++)
            ways = [.. beam.Next(ways).OrderBy(step => step.Sum).Take(width).Select(beam.Taken)];
        return ways.MinBy(way => way.Sum)?.Items(problem.Count);
    }

    private List<Step> Next(Way[] ways)
    {
        var steps = new List<Step>();
        var known = new Dictionary<ulong, int>();
        foreach (var way in ways)
        {
            for (var item = 0; item < _problem.Count; item++)
            {
                if (BitSet.Has(way.Set, item) || !BitSet.IsSubset(_problem.Order.Precedence.Before(item), way.Set) || SumOf(way, item) is not { } sum)
                    continue;
                // Two sets with one mark would only lose a way, never make a wrong one.
                var mark = unchecked(way.Mark + _marks[item] + (ulong)item);
                if (known.TryAdd(mark, steps.Count))
                    steps.Add(new(way, item, sum));
                else if (sum < steps[known[mark]].Sum)
                    steps[known[mark]] = new(way, item, sum);
            }
        }

        return steps;
    }

    private long? SumOf(Way way, int item) =>
        way.Last is not { } last ? way.Sum + way.Costs[item]
        : _problem.BehindOf(last, item) is var behind && behind == Adjacency.Never ? null
        : way.Sum + way.Costs[item] + (_price * (int)behind) + _problem.WayOf(last, item);

    private Way Taken(Step step)
    {
        var (way, item, sum) = step;
        var set = way.Set.ToArray();
        BitSet.Add(set, item);
        var costs = way.Costs.ToArray();
        var row = _problem.Order.CostsOf(item);
        for (var later = 0; later < costs.Length; later++)
            costs[later] += row[later];
        return new(set, costs, unchecked(way.Mark + _marks[item]), sum) { Last = item, Before = way };
    }

    private readonly record struct Step(Way Way, int Item, long Sum);

    /// <summary>A way to begin.</summary>
    /// <param name="Set">Items sewn.</param>
    /// <param name="Costs">What each item costs if it comes next.</param>
    /// <param name="Mark">Stands for the set.</param>
    /// <param name="Sum">Cost and trim price.</param>
    private sealed record Way(ulong[] Set, long[] Costs, ulong Mark, long Sum)
    {
        internal int? Last { get; init; }

        internal Way? Before { get; init; }

        internal static Way Empty(int count) => new(new ulong[BitSet.WordsFor(count)], new long[count], Mark: 0, Sum: 0);

        internal int[] Items(int count)
        {
            var order = new int[count];
            for (var way = this; way.Last is { } last; way = way.Before!)
                order[--count] = last;
            return order;
        }
    }
}
