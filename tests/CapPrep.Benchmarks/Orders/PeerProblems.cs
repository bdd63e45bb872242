using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Benchmarks.Orders;

/// <summary>Small designs by chance: 2 to 14 elements in 1 to 4 color blocks, costs, layers, joins and dear or cheap trims.</summary>
internal static class PeerProblems
{
    private const int MostElements = 14;
    private const int MostBlocks = 4;

    internal static OrderProblem Of(int number)
    {
        var chance = new SplitMix64((ulong)number);
        var count = 2 + chance.Below(MostElements - 1);
        var blocks = 1 + chance.Below(Math.Min(MostBlocks, count));
        var (layered, joined, never) = (chance.Below(30), chance.Below(50), chance.Below(3) == 0 ? 15 : 0);
        var cost = new long[count * count];
        var behind = new Adjacency[count * count];
        var pairs = new List<(int, int)>();
        for (var first = 0; first < count; first++)
        {
            for (var second = 0; second < count; second++)
            {
                if (first == second)
                    continue;
                var at = (first * count) + second;
                cost[at] = chance.Below(1000);
                behind[at] = Behind(chance.Below(100), joined, second == first + 1 ? 0 : never);
                if (first < second && chance.Below(100) < layered)
                    pairs.Add((first, second));
            }
        }

        var order = new LinearOrder(cost, Precedence.Of(count, pairs), seed: (ulong)number);
        return new(order, [.. Enumerable.Range(0, count).Select(item => item * blocks / count)], behind, TrimPrice: chance.Below(600));
    }

    private static Adjacency Behind(int percent, int joined, int never) =>
        percent < joined ? Adjacency.Joined : percent < joined + never ? Adjacency.Never : Adjacency.Trimmed;
}
