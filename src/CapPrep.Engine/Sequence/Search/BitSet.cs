using System.Numerics;

namespace CapPrep.Engine.Sequence.Search;

/// <summary>Helpers for sets of items kept as words of 64 bits, lowest item in the lowest bit.</summary>
internal static class BitSet
{
    internal static int WordsFor(int items) => (items + 63) >> 6;

    internal static bool Has(ReadOnlySpan<ulong> set, int item) => (set[item >> 6] >> (item & 63) & 1) != 0;

    internal static void Add(Span<ulong> set, int item) => set[item >> 6] |= 1UL << (item & 63);

    internal static void AddAll(Span<ulong> set, ReadOnlySpan<ulong> other)
    {
        for (var word = 0; word < set.Length; word++)
            set[word] |= other[word];
    }

    internal static bool IsSubset(ReadOnlySpan<ulong> part, ReadOnlySpan<ulong> whole)
    {
        for (var word = 0; word < part.Length; word++)
        {
            if ((part[word] & ~whole[word]) != 0)
                return false;
        }

        return true;
    }

    internal static int Count(ReadOnlySpan<ulong> set)
    {
        var count = 0;
        foreach (var word in set)
            count += BitOperations.PopCount(word);
        return count;
    }
}
