using CapPrep.Engine.Checks.OnTechnique;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// Columns that are too narrow to lie as satin (fact rows L11, L12), by the median of their rows: tips, serifs and
/// tapers do not count. Finer thread and ground of cover allow less, and tapes are written in tenths of a millimeter, so
/// half of that is no fault. Letters sewn in one line have no columns; a few narrow ones among many that are no letters
/// are drawn detail, and a note.
/// </summary>
internal static class NarrowColumns
{
    internal static readonly Check Check = new("stitch.column-narrow", Needs.SeatedDesign, Find, Say);

    private const double Median = 0.5;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var lines = subject.TextLines.Where(line => line.Make == LetterMake.Running).SelectMany(line => line.Elements).ToHashSet();
        Measured[] columns = [.. SeenAreas.FlatColumns(subject).Where(column => !lines.Contains(column.Element)).Select(column => Measure(column, subject, rule))];
        Measured[] narrow = [.. columns.Where(column => IsNarrow(column, rule))];
        var most = IsDetail(subject, rule, narrow, columns) ? Severity.Note : Severity.Warn;
        return narrow.Select(column => Said(column, subject, rule, most));
    }

    private static Measured Measure(Piece column, Subject subject, RuleInForce rule) =>
        new(column, ColumnRows.Of(column, subject.Stitches).WidthMm(Median), FactorOf(subject, rule, column));

    private static bool IsNarrow(Measured column, RuleInForce rule) =>
        Passed(column, rule) is not null && column.LengthMm >= rule.Parameter("lengthAtLeastMm");

    private static PassedLimit? Passed(Measured column, RuleInForce rule) =>
        rule.Limits.PassedBy((column.WidthMm + rule.Parameter("readToMm")) / column.Factor);

    /// <summary>A small part of all columns, and no letter among them.</summary>
    private static bool IsDetail(Subject subject, RuleInForce rule, Measured[] narrow, Measured[] columns)
    {
        var letters = subject.TextLines.SelectMany(line => line.Elements).ToHashSet();
        return !narrow.Any(column => letters.Contains(column.Piece.Element))
            && narrow.Sum(column => column.LengthMm) < rule.Parameter("detailShare") * columns.Sum(column => column.LengthMm);
    }

    private static Occurrence Said(Measured column, Subject subject, RuleInForce rule, Severity most)
    {
        var passed = Passed(column, rule)!;
        return new(subject.PlaceOf(column.Piece.First, column.Piece.Last))
        {
            Measured = column.WidthMm,
            Level = passed.Level < most ? passed.Level : most,
            LimitHere = column.Factor * passed.Value,
            Text = column.WidthMm < column.Factor * rule.Parameter("unreadableBelowMm") ? " It will not read." : "",
        };
    }

    private static double FactorOf(Subject subject, RuleInForce rule, Piece column) =>
        (BlockThreads.WeightWt(subject, column) >= rule.Parameter("fineFromWt") ? rule.Parameter("fineFactor") : 1)
        * (SeenAreas.LiesOnCover(subject, column) ? rule.Parameter("onCoverFactor") : 1);

    private static string Say(Report report)
    {
        var count = Figure.Count(report.WorstFirst.Count, "column is", "columns are");
        return $"{count} too narrow for satin. The narrowest is {Figure.Plain(report.Measured, 2)} mm wide; at least {Figure.Plain(report.LimitValue, 2)} mm is wanted there.{report.Worst.Text}";
    }

    /// <param name="Factor">What the limits are multiplied by.</param>
    private sealed record Measured(Piece Piece, double WidthMm, double Factor)
    {
        /// <summary>By its area and by its rows: ties at a tip are short rows on one spot, and make no column of it.</summary>
        internal double LengthMm => WidthMm == 0 ? 0 : Math.Min(Piece.Blanket.SquareMillimeters / WidthMm, Piece.Rows * Piece.PitchMm / 2);
    }
}
