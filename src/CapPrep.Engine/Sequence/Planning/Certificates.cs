using System.Globalization;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning.Colors;
using CapPrep.Engine.Sequence.Search;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Puts what was proven about an order into words that are true.</summary>
internal static class Certificates
{
    /// <param name="coloring">Color blocks and the search that found the order.</param>
    /// <param name="point">The point of its curve that was taken.</param>
    internal static Certificate Of(Coloring coloring, CurvePoint point) =>
        coloring.IsReceived ? OfReceivedBlocks(coloring, point) : OfOtherBlocks(coloring.Table, point);

    /// <summary>Nothing is proven of other color blocks; the bound is that of the layers alone.</summary>
    private static Certificate OfOtherBlocks(PlanningTable table, CurvePoint point)
    {
        var bound = CycleBound.Of(new(table.Costs.Objective(), table.Precedence, table.Seed));
        var sum = SumOf(point);
        return new(
            CertificateClaim.Found,
            Index: Rounded(sum, 4),
            Bound: Rounded(bound, 4),
            GapPoints: Rounded(100 * (sum - bound), 2),
            CostBound: Rounded(bound, 4),
            Under: ["layers", "cuts"],
            Says: Sentence($"The best order found with {table.Blocks.Max() + 1} color blocks that are not those of the tape; it is not proven that none is better."),
            SaysOfTrims: Sentence($"With any number of trims and color changes the order cost cannot fall below {Percent(bound)} %."));
    }

    private static Certificate OfReceivedBlocks(Coloring coloring, CurvePoint point)
    {
        var (table, search, mostTrims) = (coloring.Table, coloring.Search, coloring.MostTrims);
        var sum = SumOf(point);
        var proven = (search.IsExact && table.Request.Settled?.Order is null) || sum == search.SumBound;
        var bound = proven ? sum : search.SumBound;
        var isLimited = search.Points.Any(other => other.Trims > mostTrims && SumOf(other) < sum);
        return new(
            proven ? CertificateClaim.Proven : CertificateClaim.Bounded,
            Index: Rounded(sum, 4),
            Bound: Rounded(bound, 4),
            GapPoints: Rounded(100 * (sum - bound), 2),
            CostBound: Rounded(search.CostBound, 4),
            Under: [.. Under(table, isLimited)],
            Says: Says(table, proven, 100 * (sum - bound), isLimited ? mostTrims : null),
            SaysOfTrims: Sentence($"With any number of trims the order cost cannot fall below {Percent(search.CostBound)} %."));
    }

    internal static long SumOf(CurvePoint point) => point.Cost + (PlanningTable.TrimPrice * point.Trims);

    internal static double Rounded(long billionths, int decimals) =>
        Math.Round((double)billionths / OrderCosts.Scale, decimals, MidpointRounding.AwayFromZero);

    private static IEnumerable<string> Under(PlanningTable table, bool isLimited)
    {
        yield return "layers";
        yield return "colors";
        yield return "cuts";
        if (isLimited)
            yield return "trims";
        if (table.Request.TrimBy != TrimBy.Jumps)
            yield return "machine";
    }

    private static string Says(PlanningTable table, bool proven, long gap, int? mostTrims)
    {
        if (!proven)
            return Sentence($"No order of these elements that keeps layers, colors and received cuts can be more than {Points(gap)} points better in the sum of order cost and trim price.");
        var colors = table.Request.Stitches.Blocks;
        var within = mostTrims is { } most ? Sentence($", with at most {most} trims") : "";
        return Sentence(
            $"Of all orders of these {table.Count} elements that keep the {table.Precedence.Pairs} must-follow pairs, leave received cuts between neighbors and sew each of the {colors} colors once{within}, none has a lower sum of order cost and trim price (1 point per trim).");
    }

    // Upward, so that what is said holds.
    private static string Points(long hundredfold) =>
        (Math.Ceiling(hundredfold * 10 / (double)OrderCosts.Scale) / 10).ToString("0.0", CultureInfo.InvariantCulture);

    // Downward, so that what is said holds.
    private static string Percent(long billionths) =>
        (Math.Floor(billionths * 1000 / (double)OrderCosts.Scale) / 10).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
