using CapPrep.Engine.Checks.OnTechnique;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// Columns that are too narrow to lie as satin (fact rows L11, L12), by the median of their rows: tips, serifs and
/// tapers do not count. Finer thread and ground of cover allow less, and tapes are written in tenths of a millimeter, so
/// half of that is no fault.
/// </summary>
internal static class NarrowColumns
{
    internal static readonly Check Check = new("stitch.column-narrow", Needs.SeatedDesign, Find, Say);

    private const double Median = 0.5;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        foreach (var column in SeenAreas.FlatColumns(subject))
        {
            var width = ColumnRows.Of(column, subject.Stitches).WidthMm(Median);
            var factor = FactorOf(subject, rule, column);
            if (rule.Limits.PassedBy((width + rule.Parameter("readToMm")) / factor) is { } passed && LengthMm(column, width) >= rule.Parameter("lengthAtLeastMm"))
            {
                yield return new(subject.PlaceOf(column.First, column.Last))
                {
                    Measured = width,
                    Level = passed.Level,
                    LimitHere = factor * passed.Value,
                    Text = width < factor * rule.Parameter("unreadableBelowMm") ? " It will not read." : "",
                };
            }
        }
    }

    private static double FactorOf(Subject subject, RuleInForce rule, Piece column) =>
        (BlockThreads.WeightWt(subject, column) >= rule.Parameter("fineFromWt") ? rule.Parameter("fineFactor") : 1)
        * (SeenAreas.LiesOnCover(subject, column) ? rule.Parameter("onCoverFactor") : 1);

    private static double LengthMm(Piece column, double width) => width == 0 ? 0 : column.Blanket.SquareMillimeters / width;

    private static string Say(Report report)
    {
        var count = Figure.Count(report.WorstFirst.Count, "column is", "columns are");
        return $"{count} too narrow for satin. The narrowest is {Figure.Plain(report.Measured, 2)} mm wide; at least {Figure.Plain(report.LimitValue, 2)} mm is wanted there.{report.Worst.Text}";
    }
}
