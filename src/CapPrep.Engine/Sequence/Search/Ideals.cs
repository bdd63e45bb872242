using System.Numerics;

namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// Every set of items that can come first under a precedence, by size, and the items that may come next. The empty
/// set is number 0.
/// </summary>
internal sealed class Ideals
{
    private readonly int _words;
    private readonly List<ulong> _sets = [];
    private readonly List<int> _firstStep = [];
    private readonly List<int> _items = [];
    private readonly List<int> _targets = [];

    private Ideals(int words) => _words = words;

    /// <summary>How many sets there are.</summary>
    internal int Count => _firstStep.Count - 1;

    /// <summary>How many steps from set to set there are.</summary>
    internal int Steps => _items.Count;

    internal ReadOnlySpan<ulong> Set(int ideal) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_sets).Slice(ideal * _words, _words);

    /// <summary>First of the steps that lead on from a set; those of the next set follow.</summary>
    internal int FirstStep(int ideal) => _firstStep[ideal];

    /// <summary>The item a step adds; ascending within one set.</summary>
    internal int Item(int step) => _items[step];

    /// <summary>The set a step leads to.</summary>
    internal int Target(int step) => _targets[step];

    /// <summary>Null when there are more than so many in all or of one size.</summary>
    internal static Ideals? Of(Precedence precedence, int most, int mostOfOneSize = int.MaxValue)
    {
        var ideals = new Ideals(BitSet.WordsFor(precedence.Count));
        for (var word = 0; word < ideals._words; word++)
            ideals._sets.Add(0);
        var (from, known) = (0, 1);
        for (var size = 0; size < precedence.Count; size++)
        {
            var index = new SetIndex(ideals, known);
            for (var ideal = from; ideal < known; ideal++)
            {
                if (!ideals.StepOn(ideal, precedence, index, known + Math.Min(mostOfOneSize, most - known)))
                    return null;
            }

            (from, known) = (known, known + index.Count);
        }

        ideals._firstStep.Add(ideals.Steps);
        ideals._firstStep.Add(ideals.Steps);
        return ideals;
    }

    private bool StepOn(int ideal, Precedence precedence, SetIndex index, int limit)
    {
        _firstStep.Add(Steps);
        Span<ulong> set = stackalloc ulong[_words];
        Set(ideal).CopyTo(set);
        for (var item = 0; item < precedence.Count; item++)
        {
            if (BitSet.Has(set, item) || !BitSet.IsSubset(precedence.Before(item), set))
                continue;
            BitSet.Add(set, item);
            var target = index.NumberOf(set);
            set[item >> 6] &= ~(1UL << (item & 63));
            if (target >= limit)
                return false;
            _items.Add(item);
            _targets.Add(target);
        }

        return true;
    }

    /// <summary>
    /// What each step adds to a cost that goes by pairs: everything in the set before the item it adds.
    /// </summary>
    internal long[] CostOfSteps(LinearOrder order)
    {
        var costs = new long[Steps];
        var sums = new long[order.Count];
        for (var ideal = 0; ideal < Count; ideal++)
        {
            if (FirstStep(ideal) == FirstStep(ideal + 1))
                continue;
            Array.Clear(sums);
            var set = Set(ideal);
            for (var word = 0; word < set.Length; word++)
            {
                for (var bits = set[word]; bits != 0; bits &= bits - 1)
                    AddRow(sums, order.CostsOf((word << 6) + BitOperations.TrailingZeroCount(bits)));
            }

            for (var step = FirstStep(ideal); step < FirstStep(ideal + 1); step++)
                costs[step] = sums[Item(step)];
        }

        return costs;
    }

    private static void AddRow(long[] sums, ReadOnlySpan<long> row)
    {
        for (var i = 0; i < row.Length; i++)
            sums[i] = unchecked(sums[i] + row[i]);
    }

    /// <summary>Finds the number of a set among those of one size, and gives it the next one when it is new.</summary>
    private sealed class SetIndex(Ideals ideals, int first)
    {
        private int[] _slots = new int[64];

        internal int Count { get; private set; }

        internal int NumberOf(ReadOnlySpan<ulong> set)
        {
            var slot = SlotOf(set);
            if (_slots[slot] != 0)
                return first + _slots[slot] - 1;
            foreach (var word in set)
                ideals._sets.Add(word);
            _slots[slot] = ++Count;
            if (Count * 2 > _slots.Length)
                Grow();
            return first + Count - 1;
        }

        private int SlotOf(ReadOnlySpan<ulong> set)
        {
            var slot = (int)(Mix(set) & (ulong)(_slots.Length - 1));
            while (_slots[slot] != 0 && !ideals.Set(first + _slots[slot] - 1).SequenceEqual(set))
                slot = (slot + 1) & (_slots.Length - 1);
            return slot;
        }

        private static ulong Mix(ReadOnlySpan<ulong> set)
        {
            var mixed = Fnv1a.Basis;
            foreach (var word in set)
            {
                mixed = unchecked((mixed ^ word) * 0x9E3779B97F4A7C15);
                mixed ^= mixed >> 32;
            }

            return mixed;
        }

        private void Grow()
        {
            _slots = new int[_slots.Length * 4];
            for (var number = 1; number <= Count; number++)
                _slots[SlotOf(ideals.Set(first + number - 1))] = number;
        }
    }
}
