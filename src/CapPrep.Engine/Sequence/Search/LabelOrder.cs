namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// The exact curve of a color block: dynamic programming over the ideals and the element sewn last, which together
/// are the steps of the ideals. Every step carries the worthwhile (trims, cost) of all ways to go on from it.
/// </summary>
internal sealed class LabelOrder
{
    private readonly BlockProblem _problem;
    private readonly Ideals _ideals;
    private readonly long[] _stepCosts;
    private readonly CurvePoint[][] _toGo;

    private LabelOrder(BlockProblem problem, Ideals ideals)
    {
        (_problem, _ideals) = (problem, ideals);
        _stepCosts = ideals.CostOfSteps(problem.Order);
        _toGo = new CurvePoint[ideals.Steps][];
    }

    /// <summary>The curve; orders come first item by item among those that reach their point.</summary>
    internal static Curve Of(BlockProblem problem, Ideals ideals)
    {
        var labels = new LabelOrder(problem, ideals);
        for (var ideal = ideals.Count - 1; ideal >= 0; ideal--)
        {
            for (var step = ideals.FirstStep(ideal); step < ideals.FirstStep(ideal + 1); step++)
                labels._toGo[step] = labels.WaysOn(ideals.Target(step), ideals.Item(step));
        }

        var points = labels.WaysOn(ideal: 0, last: null);
        return new(points, [.. points.Select(labels.OrderOf)], IsExact: true);
    }

    private CurvePoint[] WaysOn(int ideal, int? last)
    {
        var (from, to) = (_ideals.FirstStep(ideal), _ideals.FirstStep(ideal + 1));
        if (from == to)
            return [new(0, 0)];
        var best = new List<long>();
        for (var step = from; step < to; step++)
        {
            if (TrimsBefore(step, last) is not { } trims)
                continue;
            foreach (var way in _toGo[step])
                Note(best, way.Trims + trims, way.Cost + CostBefore(step, last));
        }

        return Falling(best);
    }

    private static void Note(List<long> best, int trims, long cost)
    {
        while (best.Count <= trims)
            best.Add(long.MaxValue);
        best[trims] = Math.Min(best[trims], cost);
    }

    private static CurvePoint[] Falling(List<long> best)
    {
        var points = new List<CurvePoint>();
        for (var trims = 0; trims < best.Count; trims++)
        {
            if (best[trims] != long.MaxValue && (points.Count == 0 || best[trims] < points[^1].Cost))
                points.Add(new(trims, best[trims]));
        }

        return [.. points];
    }

    /// <summary>Trims between the element sewn last and the one of a step; null when it cannot follow.</summary>
    private int? TrimsBefore(int step, int? last) =>
        last is not { } before ? 0
        : _problem.BehindOf(before, _ideals.Item(step)) is var behind && behind == Adjacency.Never ? null
        : (int)behind;

    /// <summary>What a step costs: its element behind all those sewn, and the way to it from the one sewn last.</summary>
    private long CostBefore(int step, int? last) =>
        _stepCosts[step] + (last is { } before ? _problem.WayOf(before, _ideals.Item(step)) : 0);

    private int[] OrderOf(CurvePoint point)
    {
        var order = new int[_problem.Count];
        var (ideal, rest, last) = (0, point, (int?)null);
        for (var at = 0; at < order.Length; at++)
        {
            var step = _ideals.FirstStep(ideal);
            CurvePoint next;
            while (!Leads(step, last, rest, out next))
                step++;
            order[at] = _ideals.Item(step);
            (ideal, rest, last) = (_ideals.Target(step), next, order[at]);
        }

        return order;
    }

    private bool Leads(int step, int? last, CurvePoint rest, out CurvePoint next)
    {
        next = default;
        if (TrimsBefore(step, last) is not { } trims)
            return false;
        next = new(rest.Trims - trims, rest.Cost - CostBefore(step, last));
        return _toGo[step].Contains(next);
    }
}
