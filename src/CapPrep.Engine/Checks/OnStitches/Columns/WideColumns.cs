using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// Columns whose stitches are so long that they snag on a cap that is worn (fact rows L21 to L24): what a quarter of the
/// rows passes. Rows that are split count by their longest stitch; work over foam is wide on purpose.
/// </summary>
internal static class WideColumns
{
    internal static readonly Check Check = new("stitch.column-wide", Needs.SeatedDesign, Find, Say);

    private const int Quarter = 4;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) => SeenAreas.FlatColumns(subject)
        .Select(column => new Occurrence(subject.PlaceOf(column.First, column.Last)) { Measured = WidthMm(column, subject.Stitches) })
        .Where(column => rule.Limits.PassedBy(column.Measured) is not null);

    private static double WidthMm(Piece column, StitchSequence stitches)
    {
        long[] lengths = [.. column.RowsInOrder.Select(row => LongestStitch(row, stitches)).Order()];
        return lengths.Length == 0 ? 0 : Fine.Millimeters(lengths[lengths.Length - 1 - (lengths.Length / Quarter)]);
    }

    private static long LongestStitch(Interval row, StitchSequence stitches) =>
        Enumerable.Range(row.First + 1, row.Last - row.First).Select(point => Fine.Length(stitches.At(point) - stitches.At(point - 1))).DefaultIfEmpty(0).Max();

    private static string Say(Report report) =>
        $"{Figure.Count(report.WorstFirst.Count, "column has", "columns have")} stitches up to {Figure.Mm(report.Measured)} from edge to edge; at most {Figure.Mm(report.LimitValue)} is wanted.";
}
