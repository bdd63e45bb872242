using CapPrep.Engine.Shift;

namespace CapPrep.Engine.Sequence.Planning.Polish;

/// <summary>
/// Lets what is sewn move less afterward, on all four sheets together. Shifts are whole numbers here, so that every
/// order has one drift however it was come to.
/// </summary>
internal sealed class DriftGoal : IPolishGoal
{
    private const int Parts = 8;

    private readonly int _count;
    private readonly int[] _shifts;
    private readonly long[] _areas;
    private readonly long[] _moved;

    internal DriftGoal(ShiftModel model, IReadOnlyList<int> order)
    {
        _count = model.Count;
        (_shifts, _areas) = (model.WholeShifts, model.WholeAreas);
        _moved = new long[_count * Parts];
        for (var at = 0; at < order.Count; at++)
        {
            for (var later = at + 1; later < order.Count; later++)
                Add(_moved.AsSpan(order[at] * Parts, Parts), order[at], order[later], 1);
        }
    }

    public bool Gains(int[] order, int from, int middle, int to)
    {
        long change = 0;
        Span<long> moved = stackalloc long[Parts];
        foreach (var first in order.AsSpan(from, middle - from))
            change += Change(first, order.AsSpan(middle, to - middle), -1, moved);
        foreach (var second in order.AsSpan(middle, to - middle))
            change += Change(second, order.AsSpan(from, middle - from), 1, moved);
        return change < 0;
    }

    public void Accept(int[] order, int from, int middle, int to)
    {
        foreach (var first in order.AsSpan(from, middle - from))
        {
            foreach (var second in order.AsSpan(middle, to - middle))
            {
                Add(_moved.AsSpan(first * Parts, Parts), first, second, -1);
                Add(_moved.AsSpan(second * Parts, Parts), second, first, 1);
            }
        }
    }

    /// <summary>By how much the drift of one element changes when others are sewn after it no more, or now.</summary>
    private long Change(int element, ReadOnlySpan<int> others, int sign, Span<long> moved)
    {
        var mine = _moved.AsSpan(element * Parts, Parts);
        mine.CopyTo(moved);
        foreach (var other in others)
            Add(moved, element, other, sign);
        return _areas[element] * (Squared(moved) - Squared(mine));
    }

    private void Add(Span<long> moved, int element, int sewn, int sign)
    {
        var shifts = _shifts.AsSpan(((element * _count) + sewn) * Parts, Parts);
        for (var part = 0; part < Parts; part++)
            moved[part] += sign * shifts[part];
    }

    private static long Squared(ReadOnlySpan<long> moved)
    {
        long sum = 0;
        foreach (var part in moved)
            sum += part * part;
        return sum;
    }
}
