using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>
/// Shortens the ways with the needle up where nothing else is lost: neighboring stretches of a block change places
/// when order cost and trims stay the same.
/// </summary>
internal sealed class TravelPolish
{
    private const int LongestStretch = 12;
    private const int MostPasses = 20;

    private readonly PlanningTable _table;
    private readonly long[] _costs;
    private readonly int[] _order;

    private TravelPolish(PlanningTable table, long[] costs, int[] order) =>
        (_table, _costs, _order) = (table, costs, order);

    internal static int[] Of(PlanningTable table, long[] costs, int[] order)
    {
        var polish = new TravelPolish(table, costs, [.. order]);
        for (var pass = 0; pass < MostPasses && polish.Pass(); pass++)
            continue;
        return polish._order;
    }

    /// <summary>Way with the needle up between the elements of an order, mm to three decimals.</summary>
    internal static double LengthMm(PlanningTable table, IReadOnlyList<int> order)
    {
        var polish = new TravelPolish(table, [], [.. order]);
        long sum = 0;
        for (var at = 1; at < order.Count; at++)
            sum += polish.Way(at - 1, at);
        return Math.Round((double)sum / (Fine * Tenths.PerMillimeter), 3, MidpointRounding.AwayFromZero);
    }

    private bool Pass()
    {
        var improved = false;
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

    private bool IsOneBlock(int one, int other) => _table.Elements[_order[one]].Block == _table.Elements[_order[other]].Block;

    private bool Try(int from, int middle, int to)
    {
        var before = Ways(from - 1, from) + Ways(middle - 1, middle) + Ways(to - 1, to);
        var after = Ways(from - 1, middle) + Ways(to - 1, from) + Ways(middle - 1, to);
        if (after.Trims != before.Trims || after.Length >= before.Length || !CostsTheSame(from, middle, to))
            return false;
        int[] turned = [.. _order[middle..to], .. _order[from..middle]];
        turned.CopyTo(_order, from);
        return true;
    }

    private bool CostsTheSame(int from, int middle, int to)
    {
        long change = 0;
        foreach (var first in _order.AsSpan(from, middle - from))
        {
            foreach (var second in _order.AsSpan(middle, to - middle))
            {
                if (_table.Precedence.Orders(first, second))
                    return false;
                change += _costs[(second * _table.Count) + first] - _costs[(first * _table.Count) + second];
            }
        }

        return change == 0;
    }

    private Junction Ways(int first, int second)
    {
        if (first < 0 || second == _order.Length)
            return default;
        return Behind(first, second) switch
        {
            _ when !IsOneBlock(first, second) => new(0, Way(first, second)),
            Adjacency.Joined => default,
            Adjacency.Never => new(_order.Length, 0),
            _ => new(1, Way(first, second)),
        };
    }

    private long Way(int first, int second)
    {
        if (IsOneBlock(first, second) && Behind(first, second) == Adjacency.Joined)
            return 0;
        var way = _table.Request.Stitches.At(_table.Elements[_order[second]].First)
            - _table.Request.Stitches.At(_table.Elements[_order[first]].Last);
        return (long)Math.Sqrt((double)Fine * Fine * (((long)way.X * way.X) + ((long)way.Y * way.Y)));
    }

    private Adjacency Behind(int first, int second) => _table.Behind[(_order[first] * _table.Count) + _order[second]];

    // Lengths are kept whole, in 1/16 of a tape unit.
    private const int Fine = 16;

    private readonly record struct Junction(int Trims, long Length)
    {
        public static Junction operator +(Junction one, Junction other) => new(one.Trims + other.Trims, one.Length + other.Length);
    }
}
