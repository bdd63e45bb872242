namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// A good order by moving one item at a time to its best place, again and again from slightly shuffled orders.
/// Best insertion with restarts is the standard local search for linear ordering: R. Marti, G. Reinelt, "The Linear
/// Ordering Problem" (2011).
/// </summary>
internal sealed class InsertionSearch
{
    private static readonly ulong Purpose = Fnv1a.Of("insertion"u8);

    private readonly LinearOrder _problem;
    private readonly long[] _turns;
    private readonly int[] _order;
    private SplitMix64 _chance;
    private long _steps;
    private long _cost;

    private InsertionSearch(LinearOrder problem, int[] start)
    {
        _problem = problem;
        _turns = problem.Turns();
        _order = [.. start];
        _chance = new(Fnv1a.Of(problem.Seed, Purpose));
        _cost = problem.CostOf(start);
    }

    /// <summary>The best order found.</summary>
    /// <param name="problem">What is ordered.</param>
    /// <param name="start">An order that is allowed.</param>
    /// <param name="bound">Where no better one can be; the search ends when it is reached.</param>
    /// <param name="steps">Pairs looked at, about.</param>
    internal static (long Cost, int[] Order) From(LinearOrder problem, int[] start, long bound, long steps)
    {
        var search = new InsertionSearch(problem, start);
        search.Descend();
        var here = (Cost: search._cost, Order: search._order.ToArray());
        var best = here;
        var temperature = search.Temperature();
        while (best.Cost > bound && search._steps < steps)
        {
            search.Shuffle();
            search.Descend();
            if (search._cost <= here.Cost + Patience.Limit(temperature, search._chance.Next()))
                here = (search._cost, search._order.ToArray());
            else
                search.Restart(here);
            if (here.Cost < best.Cost)
                best = here;
        }

        return best;
    }

    /// <summary>Twice what a typical pair costs to turn: small against the cost of an order, so the search stays near good ones.</summary>
    private long Temperature()
    {
        var (sum, pairs) = (0L, 0);
        foreach (var turn in _turns)
        {
            if (turn is > 0 and not LinearOrder.Decided)
                (sum, pairs) = (sum + turn, pairs + 1);
        }

        return pairs == 0 ? 0 : 2 * sum / pairs;
    }

    private void Restart((long Cost, int[] Order) at)
    {
        at.Order.CopyTo(_order, 0);
        _cost = at.Cost;
    }

    private void Descend()
    {
        for (var moved = true; moved;)
        {
            moved = false;
            for (var at = 0; at < _order.Length; at++)
            {
                var (gain, to) = BestPlace(at);
                if (gain >= 0)
                    continue;
                Move(at, to, gain);
                moved = true;
            }
        }
    }

    private void Shuffle()
    {
        for (var moves = 3 + _chance.Below(6); moves > 0; moves--)
        {
            var at = _chance.Below(_order.Length);
            _cost += Carry(at, _chance.Below(_order.Length));
        }
    }

    /// <summary>Where the item at a place costs least; (0, its place) when it stands well.</summary>
    private (long Change, int To) BestPlace(int at)
    {
        var (best, to) = (0L, at);
        var item = _order[at];
        var sum = 0L;
        for (var place = at - 1; place >= 0 && Turn(_order[place], item) is var turn && turn != LinearOrder.Decided; place--)
        {
            sum += turn;
            if (sum < best)
                (best, to) = (sum, place);
        }

        sum = 0;
        for (var place = at + 1; place < _order.Length && Turn(item, _order[place]) is var turn && turn != LinearOrder.Decided; place++)
        {
            sum += turn;
            if (sum < best)
                (best, to) = (sum, place);
        }

        _steps += _order.Length;
        return (best, to);
    }

    /// <summary>Takes the item at a place as far toward another as the decided pairs let it go; the change of cost.</summary>
    private long Carry(int at, int to)
    {
        var (sum, item) = (0L, _order[at]);
        var step = Math.Sign(to - at);
        while (at != to)
        {
            var next = _order[at + step];
            var turn = step < 0 ? Turn(next, item) : Turn(item, next);
            if (turn == LinearOrder.Decided)
                break;
            sum += turn;
            at += step;
            _order[at - step] = next;
            _order[at] = item;
        }

        return sum;
    }

    private long Turn(int first, int second) => _turns[(first * _problem.Count) + second];

    private void Move(int at, int to, long change)
    {
        var item = _order[at];
        if (to < at)
            Array.Copy(_order, to, _order, to + 1, at - to);
        else
            Array.Copy(_order, at + 1, _order, at, to - at);
        _order[to] = item;
        _cost += change;
    }
}
