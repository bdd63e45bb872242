using CapPrep.Engine.Sequence.Cost;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Tells a new order as moves: the fewest elements whose moving makes it of the received one.</summary>
internal static class OrderMoves
{
    internal static IReadOnlyList<OrderMove> Of(PlanningTable table, IReadOnlyList<int> order)
    {
        var stays = LongestRising(order);
        var place = OrderShares.Places(order);
        return
        [
            .. Enumerable.Range(0, order.Count)
                .Where(element => !stays[element])
                .OrderBy(element => place[element])
                .Select(element => new OrderMove(element, element, place[element], Because(table, place, element))),
        ];
    }

    /// <summary>Which elements are in a longest stretch that keeps its order.</summary>
    private static bool[] LongestRising(IReadOnlyList<int> order)
    {
        var length = new int[order.Count];
        var before = new int[order.Count];
        for (var at = 0; at < order.Count; at++)
        {
            (length[at], before[at]) = (1, -1);
            for (var earlier = 0; earlier < at; earlier++)
            {
                if (order[earlier] < order[at] && length[earlier] + 1 > length[at])
                    (length[at], before[at]) = (length[earlier] + 1, earlier);
            }
        }

        var stays = new bool[order.Count];
        for (var at = order.Count == 0 ? -1 : Array.IndexOf(length, length.Max()); at >= 0; at = before[at])
            stays[order[at]] = true;
        return stays;
    }

    /// <summary>The rule that gains most by the pairs of the element that changed their order.</summary>
    private static string Because(PlanningTable table, int[] place, int element)
    {
        var (height, seam, tagline) = (0L, 0L, 0L);
        for (var other = 0; other < place.Length; other++)
        {
            if (other == element || other < element == place[other] < place[element])
                continue;
            var (first, second) = other < element ? (other, element) : (element, other);
            if (table.Costs.DelaysTagline(first, second))
                tagline++;
            var gain = table.Costs.Wrong(first, second) - table.Costs.Wrong(second, first);
            if (table.Costs.IsOfHeight(first, second))
                height += gain;
            else
                seam += gain;
        }

        return tagline > 0 ? "bottom line first"
            : IsInLine(table, element) ? "text line from the middle outward"
            : height <= 0 && seam <= 0 ? "fewer trims or shorter ways"
            : height >= seam ? "from the bottom up"
            : "from the seam outward";
    }

    private static bool IsInLine(PlanningTable table, int element) =>
        table.Subject.Lines.Lines.Any(line => line.Any(at => at.Element == element));
}
