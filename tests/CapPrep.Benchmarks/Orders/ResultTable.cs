using System.Globalization;

namespace CapPrep.Benchmarks.Orders;

/// <summary>What the search made of one published problem.</summary>
/// <param name="Name">Name of the problem.</param>
/// <param name="Count">Items to order.</param>
/// <param name="Best">Best value known; null when none is.</param>
/// <param name="Found">Value of the order found, evaluated anew.</param>
/// <param name="Short">By how much it is worse than the best known.</param>
internal sealed record ResultRow(string Name, int Count, long? Best, long Found, long? Short)
{
    internal required string Claim { get; init; }

    /// <summary>Largest gap that is good enough, percent; null without a goal.</summary>
    internal required double? GoalPercent { get; init; }

    /// <summary>Pairs that are decided, percent of all; null where none can be.</summary>
    internal double? DecidedPercent { get; init; }

    internal required double Seconds { get; init; }

    internal double? GapPercent => Short is not { } gap ? null : gap == 0 ? 0 : 100.0 * gap / Math.Max(1, Math.Abs(Best!.Value));

    /// <summary>Below zero: better than the best known, which says that one of the two is wrong where that is proven.</summary>
    internal bool Misses => GapPercent > GoalPercent || (GoalPercent == 0 && Short != 0) || (Claim == "proven" && Short > 0);
}

/// <summary>Prints results as they come, then worst and mean gap.</summary>
internal static class ResultTable
{
    /// <summary>1 when a goal is missed or no problem was there, else 0.</summary>
    internal static int Print(TextWriter output, IEnumerable<ResultRow> results)
    {
        var rows = new List<ResultRow>();
        output.WriteLine($"{"instance",-18} {"n",4} {"decided",8} {"best known",12} {"found",12} {"gap %",8} {"goal %",7}  {"claim",-8} {"seconds",8}");
        foreach (var row in results)
        {
            rows.Add(row);
            output.WriteLine(Line(row));
        }

        foreach (var (what, some) in new[] { ("with a goal", rows.Where(row => row.GoalPercent is not null)), ("all known", rows.Where(row => row.Best is not null)) })
            PrintGaps(output, what, [.. some]);
        var misses = rows.Count(row => row.Misses);
        output.WriteLine(Text($"{rows.Count} instances, {rows.Count(row => row.Claim == "proven")} proven, {misses} misses, {rows.Sum(row => row.Seconds):0.0} s"));
        return misses > 0 || rows.Count == 0 ? 1 : 0;
    }

    private static void PrintGaps(TextWriter output, string what, IReadOnlyList<ResultRow> rows)
    {
        if (rows.MaxBy(row => row.GapPercent) is { } worst)
            output.WriteLine(Text($"{what}: worst gap {worst.GapPercent:0.000} % ({worst.Name}), mean gap {rows.Average(row => row.GapPercent):0.0000} %, {rows.Count(row => row.Short == 0)} of {rows.Count} equal"));
    }

    private static string Line(ResultRow row) => Text(
        $"{row.Name,-18} {row.Count,4} {Optional(row.DecidedPercent, "0.0"),8} {row.Best,12} {row.Found,12} {Optional(row.GapPercent, "0.000"),8} {Optional(row.GoalPercent, "0.0"),7}  {row.Claim,-8} {row.Seconds,8:0.000}{(row.Misses ? "  MISS" : "")}");

    private static string Optional(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "-";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
