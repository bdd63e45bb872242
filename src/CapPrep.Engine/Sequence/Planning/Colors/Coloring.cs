using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Colors;

/// <summary>One way to share the elements out over color blocks, and the orders found for it.</summary>
/// <param name="Table">Elements with these blocks.</param>
/// <param name="Search">What trims buy when every one of the blocks is sewn once.</param>
internal sealed record Coloring(PlanningTable Table, OrderSearch Search)
{
    /// <summary>Color changes beyond those of the tape as first received.</summary>
    internal int ExtraColorChanges { get; } = Table.Blocks.Max() - Table.Request.Budget.ReceivedColorChanges;

    /// <summary>The blocks of the tape, every one sewn once.</summary>
    internal bool IsReceived { get; init; }

    /// <summary>The ticket or the shop lets an order have so many color changes.</summary>
    internal bool IsAllowed => IsReceived || ExtraColorChanges <= Table.Request.Budget.AllowExtraColorChanges;

    /// <summary>The most trims an order with these blocks may have.</summary>
    internal int MostTrims { get; } = Table.Request.Budget.MostTrims(
        Table.Request.TrimBy, Table.Blocks.Max() - Table.Request.Budget.ReceivedColorChanges);

    internal static Coloring Of(PlanningTable table, long[] objective, Coloring? like = null) =>
        new(table, OrderSearch.Of(table.Problem(objective), like?.Search)) { IsReceived = like is null };

    /// <summary>The point with the least sum of order cost and trim price within the trims allowed; null when there is none.</summary>
    internal CurvePoint? Best
    {
        get
        {
            var allowed = Search.Points.Where(point => point.Trims <= MostTrims).ToArray();
            return allowed.Length == 0 ? null : allowed.MinBy(Certificates.SumOf);
        }
    }

    /// <summary>As <see cref="Best"/>; where that many trims are not allowed, the least sum with any.</summary>
    internal CurvePoint Wanted => Best ?? Search.Points.MinBy(Certificates.SumOf);

    /// <summary>The order of <see cref="Wanted"/>.</summary>
    internal int[] WantedOrder => Search.OrderWith(Wanted.Trims);

    /// <summary>Order cost, trim price and the price of color changes.</summary>
    internal long PriceOf(CurvePoint point) => Certificates.SumOf(point) + PriceOfChanges;

    private long PriceOfChanges => ExtraColorChanges * PriceOfChange(Table.Request.Budget);

    /// <summary>Two blocks of one thread would be sewn one after the other, with a stop between them for nothing.</summary>
    internal bool StopsForNothing
    {
        get
        {
            var order = WantedOrder;
            return order.Zip(order.Skip(1)).Any(pair =>
                Table.Blocks[pair.First] != Table.Blocks[pair.Second]
                && Table.Elements[pair.First].Thread == Table.Elements[pair.Second].Thread
                && !Table.IsBesideStop(pair.First));
        }
    }

    /// <summary>House: a color change costs as many points as the trims that take as long; a trim counts as a second at least.</summary>
    private static long PriceOfChange(OrderBudget budget) =>
        (long)(PlanningTable.TrimPrice * budget.ColorChangeSeconds / Math.Max(1, budget.TrimSeconds));
}
