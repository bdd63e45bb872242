using CapPrep.Engine.Sequence.Search;
using CapPrep.TestKit.Orders;
using CsCheck;

namespace CapPrep.Engine.Tests.Sequence.Search;

/// <summary>Ordering problems for tests: from matrices, and by chance.</summary>
internal static class Problems
{
    internal static LinearOrder Linear(long[,] cost, params IReadOnlyList<(int Before, int After)> pairs)
    {
        var count = cost.GetLength(0);
        return new([.. cost.Cast<long>()], Precedence.Of(count, pairs), seed: 1);
    }

    /// <summary>Up to eight elements in up to three blocks, with pairs, joins and, sometimes, neighbors that cannot be.</summary>
    internal static readonly Gen<Case> Small =
        from count in Gen.Int[1, 8]
        from costs in Gen.Long[0, 1000].Array[count * count]
        from starts in Gen.Int[0, 3].Array[count]
        from decided in Gen.Int[0, 7].Array[count * count]
        from behind in Gen.Int[0, 9].Array[count * count]
        from price in Gen.Long[0, 400]
        select new Case(count, costs, Blocks(starts), decided, behind, price);

    private static int[] Blocks(int[] starts)
    {
        var block = 0;
        return [.. starts.Select((start, at) => at > 0 && start == 0 ? ++block : block)];
    }

    internal sealed record Case(int Count, long[] Costs, int[] Block, int[] Decided, int[] BehindDraws, long Price)
    {
        internal long[,] Matrix => KnownOrders.Matrix(Count, (i, j) => IsPair(i, j) || IsPair(j, i) ? 0 : Costs[(i * Count) + j]);

        internal IReadOnlyList<(int Before, int After)> Pairs =>
            [.. from i in Enumerable.Range(0, Count) from j in Enumerable.Range(0, Count) where IsPair(i, j) select (i, j)];

        /// <summary>The received neighbors can always follow each other.</summary>
        internal Adjacency BehindOf(int first, int second) => BehindDraws[(first * Count) + second] switch
        {
            0 or 1 or 2 => Adjacency.Joined,
            3 when second != first + 1 => Adjacency.Never,
            _ => Adjacency.Trimmed,
        };

        internal OrderProblem Problem() => new(
            Linear(Matrix, Pairs),
            Block,
            [.. from i in Enumerable.Range(0, Count) from j in Enumerable.Range(0, Count) select BehindOf(i, j)],
            Price);

        /// <summary>Every order that keeps pairs, sews each block once and can be sewn, with its trims and cost.</summary>
        internal IEnumerable<(int Trims, long Cost, int[] Order)> All() =>
            from order in AllOrders.Of(Count, Pairs)
            where SewsBlocksOnce(order) && Neighbors(order).All(pair => BehindOf(pair.First, pair.Second) != Adjacency.Never)
            select (Neighbors(order).Count(pair => BehindOf(pair.First, pair.Second) == Adjacency.Trimmed), AllOrders.Cost(Matrix, order), order);

        private IEnumerable<(int First, int Second)> Neighbors(int[] order) =>
            order.Zip(order.Skip(1)).Where(pair => Block[pair.First] == Block[pair.Second]);

        private bool SewsBlocksOnce(int[] order) =>
            order.Zip(order.Skip(1)).Count(pair => Block[pair.First] != Block[pair.Second]) == Block[^1];

        private bool IsPair(int before, int after) => before < after && Decided[(before * Count) + after] == 0;
    }
}
