using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Polish;

/// <summary>What is made smaller while order cost, trims and stops stay the same.</summary>
internal interface IPolishGoal
{
    /// <summary>
    /// Whether it gets smaller when the stretches [from, middle) and [middle, to) of the order change places.
    /// </summary>
    bool Gains(int[] order, int from, int middle, int to);

    /// <summary>They changed places; <paramref name="order"/> is still the old one.</summary>
    void Accept(int[] order, int from, int middle, int to);
}

/// <summary>
/// Improves an order where nothing else is lost: neighboring stretches of a block, or neighboring blocks, change places
/// when order cost and trims stay the same.
/// </summary>
internal sealed class OrderPolish
{
    private const int LongestStretch = 12;
    private const int MostPasses = 20;

    private readonly PlanningTable _table;
    private readonly long[] _costs;
    private readonly int[] _order;
    private readonly IPolishGoal _goal;

    private OrderPolish(PlanningTable table, long[] costs, int[] order, IPolishGoal goal) =>
        (_table, _costs, _order, _goal) = (table, costs, order, goal);

    /// <param name="table">Elements and what may follow what.</param>
    /// <param name="costs">Costs that may not rise, row by row; empty: they do not count.</param>
    /// <param name="order">Where it begins.</param>
    /// <param name="goal">What is made smaller.</param>
    internal static int[] Of(PlanningTable table, long[] costs, int[] order, IPolishGoal goal)
    {
        var polish = new OrderPolish(table, costs, [.. order], goal);
        for (var pass = 0; pass < MostPasses && polish.Pass(); pass++)
            continue;
        return polish._order;
    }

    private bool Pass()
    {
        var improved = PassOverBlocks();
        for (var middle = 1; middle < _order.Length; middle++)
        {
            for (var from = middle - 1; from >= Math.Max(0, middle - LongestStretch) && IsOneBlock(from, middle); from--)
            {
                for (var to = middle + 1; to <= Math.Min(_order.Length, middle + LongestStretch) && IsOneBlock(middle, to - 1); to++)
                    improved |= Try(from, middle, to);
            }
        }

        return improved;
    }

    private bool PassOverBlocks()
    {
        var improved = false;
        int[] starts = [.. Enumerable.Range(0, _order.Length).Where(at => at == 0 || !IsOneBlock(at - 1, at)), _order.Length];
        for (var block = 1; block + 1 < starts.Length; block++)
        {
            if (BringsThreadTogether(starts[block - 1], starts[block], starts[block + 1]) || !Try(starts[block - 1], starts[block], starts[block + 1]))
                continue;
            starts[block] = starts[block - 1] + starts[block + 1] - starts[block];
            improved = true;
        }

        return improved;
    }

    /// <summary>Two blocks of one thread beside each other would have a stop between them for nothing.</summary>
    private bool BringsThreadTogether(int from, int middle, int to) =>
        IsOneThread(from - 1, middle) || IsOneThread(to - 1, from) || IsOneThread(middle - 1, to);

    private bool IsOneThread(int one, int other) =>
        one >= 0 && other < _order.Length && _table.Elements[_order[one]].Thread == _table.Elements[_order[other]].Thread;

    private bool IsOneBlock(int one, int other) => _table.Blocks[_order[one]] == _table.Blocks[_order[other]];

    private bool Try(int from, int middle, int to)
    {
        if (!MayChange(from, middle, to) || TrimsAfter(from, middle, to) != TrimsBefore(from, middle, to) || !_goal.Gains(_order, from, middle, to))
            return false;
        _goal.Accept(_order, from, middle, to);
        int[] turned = [.. _order[middle..to], .. _order[from..middle]];
        turned.CopyTo(_order, from);
        return true;
    }

    private bool MayChange(int from, int middle, int to)
    {
        long change = 0;
        foreach (var first in _order.AsSpan(from, middle - from))
        {
            foreach (var second in _order.AsSpan(middle, to - middle))
            {
                if (_table.Precedence.Orders(first, second))
                    return false;
                change += _costs.Length == 0 ? 0 : _costs[(second * _table.Count) + first] - _costs[(first * _table.Count) + second];
            }
        }

        return change == 0;
    }

    private int TrimsBefore(int from, int middle, int to) => Trims(from - 1, from) + Trims(middle - 1, middle) + Trims(to - 1, to);

    private int TrimsAfter(int from, int middle, int to) => Trims(from - 1, middle) + Trims(to - 1, from) + Trims(middle - 1, to);

    private int Trims(int first, int second)
    {
        if (first < 0 || second == _order.Length || !IsOneBlock(first, second))
            return 0;
        return _table.Behind[(_order[first] * _table.Count) + _order[second]] switch
        {
            Adjacency.Joined => 0,
            Adjacency.Never => _order.Length,
            _ => 1,
        };
    }
}
