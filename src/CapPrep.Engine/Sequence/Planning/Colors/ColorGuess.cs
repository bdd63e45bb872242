using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Colors;

/// <summary>
/// Guesses what other color blocks are worth: the blocks in a good order, what is sewn inside them in the order it had.
/// </summary>
internal sealed class ColorGuess
{
    private readonly PlanningTable _table;
    private readonly OrderProblem _problem;
    private readonly int[] _order;

    internal ColorGuess(Coloring from, long[] objective) =>
        (_table, _problem, _order) = (from.Table, from.Table.Problem(objective), from.WantedOrder);

    /// <summary>Order cost and trim price; null when these blocks cannot each be sewn once.</summary>
    internal long? PriceOf(int[] blocks)
    {
        var problem = _problem with { Block = blocks };
        return BlockOrder.NearCost(problem, [.. _order.Select(element => blocks[element]).Distinct()]) is { } between
            && Inside(blocks) is { } inside
            ? between + inside
            : null;
    }

    private long? Inside(int[] blocks)
    {
        var last = new int?[blocks.Length];
        long sum = 0;
        for (var at = 0; at < _order.Length; at++)
        {
            var (element, block) = (_order[at], blocks[_order[at]]);
            if (last[block] is { } before)
            {
                if (_table.Behind[(before * _table.Count) + element] is var behind && behind == Adjacency.Never)
                    return null;
                sum += (int)behind * _problem.TrimPrice;
            }

            last[block] = element;
            for (var later = at + 1; later < _order.Length; later++)
                sum += blocks[_order[later]] == block ? _problem.Order.Cost(element, _order[later]) : 0;
        }

        return sum;
    }
}
