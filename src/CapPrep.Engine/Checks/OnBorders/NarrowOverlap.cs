using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>
/// Fills that hardly reach under their borders: cloth shows between them when it shifts. Silent where both are of one
/// thread, and where the border is reported as too thin already: to widen it is to give it overlap.
/// </summary>
internal static class NarrowOverlap
{
    internal static readonly Check Check = new("border.overlap", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        foreach (var border in subject.Borders.Where(border => !BorderThreads.AreOne(border, subject) && !ThinBorder.Reports(subject, border)))
        {
            EdgeRow[] rows = [.. border.RowsOnEdge(subject.Stitches).Where(row => row.Part.Sure)];
            if (EdgeRow.LengthMm(rows) < rule.Parameter("lengthAtLeastMm"))
                continue;
            var overlap = EdgeRow.Quantile(rows, rule.Parameter("shareOfLength"), row => row.OverlapMm);
            if (rule.Limits.PassedBy(overlap + rule.Parameter("readToMm")) is { } passed)
                yield return new(PlaceOf(subject, rows)) { Measured = overlap, Level = passed.Level };
        }
    }

    private static Place PlaceOf(Subject subject, EdgeRow[] rows)
    {
        Piece[] parts = [.. rows.Select(row => row.Part).Distinct()];
        return BorderPlaces.Of(subject, parts);
    }

    private static string Say(Report report)
    {
        var count = report.WorstFirst.Count;
        var overlap = Math.Round(report.Measured, 1, MidpointRounding.AwayFromZero);
        if (overlap > 0)
            return $"{Figure.Count(count, "fill hardly reaches its border", "fills hardly reach their borders")}: only {Figure.Mm(overlap)} lies under it.";
        var gap = overlap < 0 ? $": a gap of {Figure.Mm(-overlap)} is left" : "";
        return $"{Figure.Count(count, "fill does not reach under its border", "fills do not reach under their borders")}{gap}.";
    }
}
