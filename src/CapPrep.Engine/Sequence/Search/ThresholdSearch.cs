namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// A good curve for a block that is too large for the exact one: at several trim prices the order is changed by
/// exchanging neighboring stretches, at first also for the worse, and the best order seen with every number of trims
/// is kept. On a machine that cannot trim it may miss orders that are reached only through others that cannot be sewn.
/// </summary>
internal sealed class ThresholdSearch
{
    private static readonly ulong Purpose = Fnv1a.Of("threshold"u8);

    // In hundredths of the block's own trim price; from "trims are free" to "trims are dear".
    private static readonly int[] PricePercents = [0, 50, 100, 300, 1000];

    private const int LongestStretch = 24;
    private const int CoolingSteps = 64;

    private readonly BlockProblem _problem;
    private readonly long[] _turns;
    private readonly int[] _order;
    private readonly int[] _spare = new int[LongestStretch];
    private readonly Best[] _best;
    private SplitMix64 _chance;
    private long _cost;
    private int _trims;
    private long _price;

    private ThresholdSearch(BlockProblem problem)
    {
        _problem = problem;
        _turns = problem.Order.Turns();
        _order = new int[problem.Count];
        _best = new Best[problem.Count];
        _chance = new(Fnv1a.Of(problem.Order.Seed, Purpose));
    }

    /// <param name="problem">A block of at least two elements.</param>
    /// <param name="starts">Allowed orders to begin with.</param>
    internal static Curve Of(BlockProblem problem, IReadOnlyList<int[]> starts)
    {
        var search = new ThresholdSearch(problem);
        foreach (var start in starts)
            search.Put(start);
        var steps = Math.Min(90_000, Math.Max(20_000, 1_500 * problem.Count));
        foreach (var percent in PricePercents)
            search.CoolDown(problem.TrimPrice * percent / 100, steps);
        return Curve.Of(search.Found(), isExact: false);
    }

    private IEnumerable<(CurvePoint Point, int[] Order)> Found()
    {
        for (var trims = 0; trims < _best.Length; trims++)
        {
            if (_best[trims].Order is { } order)
                yield return (new(trims, _best[trims].Cost), order);
        }
    }

    private void Put(int[] order)
    {
        if (_problem.TrimsOf(order) is not { } trims)
            return;
        order.CopyTo(_order, 0);
        (_cost, _trims) = (_problem.CostOf(order), trims);
        Keep();
    }

    private void CoolDown(long price, int steps)
    {
        _price = price;
        Put(BestAt(price));
        var temperature = FirstTemperature();
        for (var stage = 0; stage < CoolingSteps; stage++)
        {
            for (var step = 0; step < steps / CoolingSteps; step++)
                Try(Patience.Limit(temperature, _chance.Next()));
            temperature -= temperature / 8;
        }
    }

    private int[] BestAt(long price)
    {
        var best = Found().MinBy(found => found.Point.Cost + (price * found.Point.Trims));
        return best.Order;
    }

    /// <summary>About half of what a typical move changes.</summary>
    private long FirstTemperature()
    {
        long sum = 0;
        var moves = 0;
        for (var draw = 0; draw < 400; draw++)
        {
            if (Draw() is { } move)
                (sum, moves) = (sum + Math.Abs(move.Change + (_price * move.Trims)), moves + 1);
        }

        return moves == 0 ? 0 : sum / moves / 2;
    }

    private void Try(long limit)
    {
        if (Draw() is not { } move || move.Change + (_price * move.Trims) > limit)
            return;
        Exchange(move);
        _cost += move.Change;
        _trims += move.Trims;
        Keep();
    }

    private void Keep()
    {
        ref var best = ref _best[_trims];
        if (best.Order is null)
            best.Order = [.. _order];
        else if (_cost < best.Cost)
            _order.CopyTo(best.Order, 0);
        else
            return;
        best.Cost = _cost;
    }

    /// <summary>Two neighboring stretches and what it changes to exchange them; null when that may not be.</summary>
    private Move? Draw()
    {
        var middle = 1 + _chance.Below(_order.Length - 1);
        var from = middle - Stretch(middle);
        var to = middle + Stretch(_order.Length - middle);
        return ChangeOfTrims(from, middle, to) is { } trims && ChangeOfCost(from, middle, to) is { } change
            ? new(from, middle, to, change + ChangeOfWays(from, middle, to), trims)
            : null;
    }

    /// <summary>A length from 1 to <paramref name="most"/>, short ones more often.</summary>
    private int Stretch(int most)
    {
        var longest = Math.Min(most, LongestStretch);
        return 1 + Math.Min(_chance.Below(longest), _chance.Below(longest));
    }

    private long? ChangeOfCost(int from, int middle, int to)
    {
        long sum = 0;
        for (var first = from; first < middle; first++)
        {
            var row = _order[first] * _order.Length;
            for (var second = middle; second < to; second++)
            {
                var turn = _turns[row + _order[second]];
                if (turn == LinearOrder.Decided)
                    return null;
                sum = unchecked(sum + turn);
            }
        }

        return sum;
    }

    private long ChangeOfWays(int from, int middle, int to) => _problem.Ways.Length == 0 ? 0
        : Way(from - 1, middle) + Way(to - 1, from) + Way(middle - 1, to)
            - Way(from - 1, from) - Way(middle - 1, middle) - Way(to - 1, to);

    private long Way(int first, int second) =>
        first < 0 || second == _order.Length ? 0 : _problem.WayOf(_order[first], _order[second]);

    private int? ChangeOfTrims(int from, int middle, int to)
    {
        var before = Trims(from - 1, from) + Trims(middle - 1, middle) + Trims(to - 1, to);
        var after = Trims(from - 1, middle) + Trims(to - 1, from) + Trims(middle - 1, to);
        return after - before;
    }

    /// <summary>Trims between the elements at two places; none at the ends of the block, null when it cannot be.</summary>
    private int? Trims(int first, int second) =>
        first < 0 || second == _order.Length ? 0
        : _problem.BehindOf(_order[first], _order[second]) is var behind && behind == Adjacency.Never ? null
        : (int)behind;

    private void Exchange(Move move)
    {
        var (first, second) = (move.Middle - move.From, move.To - move.Middle);
        Array.Copy(_order, move.From, _spare, 0, first);
        Array.Copy(_order, move.Middle, _order, move.From, second);
        Array.Copy(_spare, 0, _order, move.From + second, first);
    }

    private readonly record struct Move(int From, int Middle, int To, long Change, int Trims);

    private struct Best
    {
        public long Cost;
        public int[]? Order;
    }
}
