namespace CapPrep.Engine.Shift;

/// <summary>
/// What a sew order does to the places of its elements on one sheet, where nothing that is sewn holds the cloth:
/// shifts add up.
/// </summary>
internal static class Drift
{
    /// <summary>How far each element moves after it was sewn, by index of element.</summary>
    internal static ClothShift[] After(Influence influence, IReadOnlyList<int> order)
    {
        var moved = new ClothShift[influence.Count];
        for (var at = 0; at < order.Count; at++)
        {
            for (var later = at + 1; later < order.Count; later++)
                moved[order[at]] += influence.On(order[at], order[later]);
        }

        return moved;
    }

    /// <summary>How far the cloth under each element has moved when it is sewn, by index of element.</summary>
    internal static ClothShift[] Before(Influence influence, IReadOnlyList<int> order) =>
        After(influence, [.. order.Reverse()]);

    /// <summary>Root of the mean square over the sewn area, mm.</summary>
    internal static double Of(Influence influence, IReadOnlyList<ClothShift> moved)
    {
        var (sum, area) = (0.0, 0.0);
        for (var element = 0; element < moved.Count; element++)
        {
            sum += influence.Areas[element] * moved[element].Squared;
            area += influence.Areas[element];
        }

        return area > 0 ? Math.Sqrt(sum / area) : 0;
    }

    /// <summary>How far the cloth moves under a border between its fill and it: what is sewn between the two does that.</summary>
    internal static ClothShift GapOf(Influence influence, IReadOnlyList<int> order, int fill, int border)
    {
        var between = order.SkipWhile(element => element != fill).Skip(1).TakeWhile(element => element != border);
        return between.Aggregate(default(ClothShift), (sum, element) => sum + influence.On(border, element));
    }
}
