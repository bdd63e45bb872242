namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// A good order of a block at one trim price, when neighbors matter: the best exchange of neighboring stretches, again
/// and again from slightly shuffled orders. Exchanging stretches keeps their direction, and so what is decided inside.
/// Source of the move: L. M. Gambardella, M. Dorigo, "An ant colony system hybridized with a new local search for the
/// sequential ordering problem" (2000).
/// </summary>
internal sealed class StretchSearch
{
    private static readonly ulong Purpose = Fnv1a.Of("stretches"u8);

    private const int LongestStretch = 50;
    private const int LongestShuffled = 30;

    // So that three of it still fit, and no sum of real prices comes near.
    private const long Never = long.MaxValue / 16;

    // Temperatures are kept in 1/256, since ways may be short.
    private const int Fine = 8;

    private readonly BlockProblem _problem;
    private readonly long[] _turns;
    private readonly long[] _behind;
    private readonly long[] _moved;
    private readonly ulong[] _stretch;
    private readonly int[] _order;
    private readonly bool _hasCosts;
    private readonly (long Cost, int[]? Order)[] _best;
    private readonly long _price;
    private readonly long _mostSteps;
    private SplitMix64 _chance;
    private long _steps;
    private long _sum;

    private StretchSearch(BlockProblem problem, int[] start, long price, long steps)
    {
        (_problem, _price, _mostSteps) = (problem, price, steps);
        _best = new (long, int[]?)[problem.Count];
        _turns = [.. problem.Order.Turns().Select(turn => turn == LinearOrder.Decided ? 0 : turn)];
        _hasCosts = _turns.Any(turn => turn != 0);
        _behind = [.. problem.Behind.Select((behind, at) => behind == Adjacency.Never ? Never : PriceOf(behind, at))];
        _moved = new long[problem.Count];
        _stretch = new ulong[BitSet.WordsFor(problem.Count)];
        _order = [.. start];
        _chance = new(Fnv1a.Of(problem.Order.Seed, Purpose));
        _sum = problem.CostOf(start) + (price * (problem.TrimsOf(start) ?? 0));
    }

    private long PriceOf(Adjacency behind, int at) =>
        (_price * (int)behind) + (_problem.Ways.Length == 0 ? 0 : _problem.Ways[at]);

    /// <summary>
    /// The best orders found, by number of trims; the one with the least sum of cost and trim price is among them, those
    /// with other trims were met on the way.
    /// </summary>
    /// <param name="problem">A block of at least two elements.</param>
    /// <param name="start">An order that is allowed and can be sewn.</param>
    /// <param name="price">What a trim costs.</param>
    /// <param name="steps">Exchanges looked at, about.</param>
    internal static IEnumerable<int[]> From(BlockProblem problem, int[] start, long price, long steps)
    {
        var search = new StretchSearch(problem, start, price, steps);
        search.Descend(0, problem.Count);
        search.Keep();
        var here = (Sum: search._sum, Order: search._order.ToArray());
        while (search._steps < steps)
        {
            if (search.Shuffle() is var (from, to))
                search.Descend(from - (2 * LongestStretch), to + 1);
            search.Keep();
            var temperature = (here.Sum << Fine) / problem.Count / 64 * (64 - (63 * search._steps / steps));
            if (search._sum <= here.Sum + (Patience.Limit(temperature, search._chance.Next()) >> Fine))
                here = (search._sum, search._order.ToArray());
            else
                search.Restart(here);
        }

        return search._best.Select(best => best.Order).OfType<int[]>();
    }

    private void Keep()
    {
        var trims = _problem.TrimsOf(_order) ?? throw new InvalidOperationException("An exchange made neighbors that cannot be.");
        ref var best = ref _best[trims];
        var cost = _sum - (_price * trims);
        if (best.Order is null || cost < best.Cost)
            best = (cost, [.. _order]);
    }

    private void Restart((long Sum, int[] Order) at)
    {
        at.Order.CopyTo(_order, 0);
        _sum = at.Sum;
    }

    /// <summary>Exchanges two short stretches by chance, for better or worse; null when no draw may be.</summary>
    private (int From, int To)? Shuffle()
    {
        for (var draw = 0; draw < 50; draw++)
        {
            _steps++;
            var middle = 1 + _chance.Below(_order.Length - 1);
            var from = middle - 1 - _chance.Below(Math.Min(middle, LongestShuffled));
            var to = middle + 1 + _chance.Below(Math.Min(_order.Length - middle, LongestShuffled));
            if (ChangeOf(from, middle, to) is not { } change)
                continue;
            Exchange(from, middle, to, change);
            return (from, to);
        }

        return null;
    }

    private long? ChangeOf(int from, int middle, int to)
    {
        var sum = Junctions(from, middle, to);
        if (sum >= Never / 2)
            return null;
        for (var first = from; first < middle; first++)
        {
            for (var second = middle; second < to; second++)
            {
                if (_problem.Order.Precedence.Orders(_order[first], _order[second]))
                    return null;
                sum += _turns[(_order[first] * _order.Length) + _order[second]];
            }
        }

        return sum;
    }

    /// <summary>Best exchanges that begin at these places, and then near every place where something changed.</summary>
    private void Descend(int from, int to)
    {
        while (from < to)
        {
            var (nextFrom, nextTo) = (_order.Length, 0);
            for (var at = Math.Max(0, from); at < Math.Min(to, _order.Length - 1) && _steps < _mostSteps; at++)
            {
                if (!Improve(at))
                    continue;
                nextFrom = Math.Min(nextFrom, at - (2 * LongestStretch));
                nextTo = Math.Max(nextTo, at + (2 * LongestStretch));
            }

            (from, to) = (nextFrom, nextTo);
        }
    }

    private bool Improve(int from)
    {
        var improved = false;
        while (_steps < _mostSteps && BestFrom(from) is { Change: < 0 } best)
        {
            Exchange(from, best.Middle, best.To, best.Change);
            improved = true;
        }

        return improved;
    }

    /// <summary>The best exchange whose first stretch begins here.</summary>
    private (int Middle, int To, long Change) BestFrom(int from)
    {
        var best = (Middle: 0, To: 0, Change: 0L);
        var last = Math.Min(_order.Length, from + LongestStretch + 1);
        var reach = Math.Min(_order.Length, from + (2 * LongestStretch));
        Array.Clear(_moved, from, reach - from);
        Array.Clear(_stretch);
        for (var middle = from + 1; middle < last; middle++)
        {
            Take(_order[middle - 1], middle, reach);
            var moved = 0L;
            var before = Behind(from - 1, middle) - Behind(from - 1, from) - Behind(middle - 1, middle);
            var end = Math.Min(_order.Length, middle + LongestStretch);
            for (var to = middle + 1; to <= end && MayPass(_order[to - 1]); to++)
            {
                moved += _moved[to - 1];
                var change = moved + before + Behind(to - 1, from) + Behind(middle - 1, to) - Behind(to - 1, to);
                if (change < best.Change)
                    best = (middle, to, change);
                _steps++;
            }
        }

        return best;
    }

    /// <summary>One item more in the first stretch: what it changes to bring each later one before it.</summary>
    private void Take(int item, int from, int to)
    {
        BitSet.Add(_stretch, item);
        _steps++;
        if (!_hasCosts)
            return;
        var row = item * _order.Length;
        for (var at = from; at < to; at++)
            _moved[at] += _turns[row + _order[at]];
        _steps += (to - from) / 4;
    }

    private bool MayPass(int item)
    {
        var before = _problem.Order.Precedence.Before(item);
        for (var word = 0; word < before.Length; word++)
        {
            if ((before[word] & _stretch[word]) != 0)
                return false;
        }

        return true;
    }

    private long Junctions(int from, int middle, int to) =>
        Behind(from - 1, middle) + Behind(to - 1, from) + Behind(middle - 1, to)
        - Behind(from - 1, from) - Behind(middle - 1, middle) - Behind(to - 1, to);

    private long Behind(int first, int second) =>
        first < 0 || second == _order.Length ? 0 : _behind[(_order[first] * _order.Length) + _order[second]];

    private void Exchange(int from, int middle, int to, long change)
    {
        int[] turned = [.. _order.AsSpan(middle, to - middle), .. _order.AsSpan(from, middle - from)];
        turned.CopyTo(_order, from);
        _sum += change;
    }
}
