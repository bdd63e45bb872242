using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>
/// Measures a border row by row. A row counts where the fill goes on beyond one of its ends and not beyond the other:
/// there the border runs along an edge.
/// </summary>
internal static class EdgeRows
{
    // Rows about one whose median is the width there: the row and three to each side.
    private const int Beside = 3;

    // The same for the overlap: where rows of the fill end one after the other its edge is a flight of steps.
    private const int BesideOnSteps = 12;

    // How far beyond an end the fill is looked for, tape units.
    private static readonly int[] Probes = [3, 6, 9];

    // So far the fill may fall short of the inner edge and still belong to the border, tape units.
    private const int WidestGap = 9;

    // A hole between two rows of the fill is no edge, tape units.
    private const int Hole = 4;

    // Cells are hidden whole where a thread runs over a part of them: half a cell, hundredths of a millimeter.
    private const int HalfCell = 12;

    internal static IReadOnlyList<EdgeRow> Of(Border border, StitchSequence stitches) =>
        [.. border.Columns.SelectMany(column => Of(column, border.Ground, stitches))];

    private static IEnumerable<EdgeRow> Of(Piece column, Cover fill, StitchSequence stitches)
    {
        Row[] rows = [.. column.RowsInOrder.Select(row => new Row(stitches.At(row.First), stitches.At(row.Last)))];
        double[] across = [.. rows.Select((row, i) => row.Across(WayAt(rows, i)))];
        var widths = Smoothed([.. rows.Select((row, i) => (int)(across[i] * row.Length))], Beside);
        (int Row, int Overlap)[] onEdge = [.. Enumerable.Range(0, rows.Length)
            .Select(i => (Row: i, Overlap: OverlapOf(rows[i], fill)))
            .Where(row => row.Overlap is not null)
            .Select(row => (row.Row, (int)Math.Round(across[row.Row] * row.Overlap!.Value)))];
        var overlaps = Smoothed([.. onEdge.Select(row => row.Overlap)], BesideOnSteps);
        return onEdge.Select((row, i) => new EdgeRow(column, StepMm(rows, row.Row), Fine.Millimeters(widths[row.Row]), overlaps[i] / 100.0));
    }

    /// <summary>The way of the border at a row, from three rows before to three behind.</summary>
    private static TapePoint WayAt(Row[] rows, int i) =>
        rows[Math.Min(rows.Length - 1, i + Beside)].Twice - rows[Math.Max(0, i - Beside)].Twice;

    /// <summary>Running median.</summary>
    private static int[] Smoothed(int[] values, int beside) =>
        [.. values.Select((_, i) => Median.Of(values.AsSpan(Math.Max(0, i - beside)..Math.Min(values.Length, i + beside + 1))))];

    private static double StepMm(Row[] rows, int i)
    {
        var (from, to) = (rows[Math.Max(0, i - 1)], rows[i]);
        return Fine.Millimeters(Fine.Length(to.Twice - from.Twice)) / 2;
    }

    /// <summary>Hundredths of a millimeter; null where the row does not lie on an edge.</summary>
    private static int? OverlapOf(Row row, Cover fill)
    {
        if (row.Length == 0)
            return null;
        var (atFrom, atTo) = (GoesOn(row, fill), GoesOn(row.Back, fill));
        return atFrom == atTo ? null : Overlap(atFrom ? row : row.Back, fill);
    }

    /// <summary>The fill lies beyond the start of a row.</summary>
    private static bool GoesOn(Row row, Cover fill) => Probes.Count(probe => fill.Contains(row.At(-probe))) >= 2;

    /// <summary>From the start of a row, which is its inner end.</summary>
    private static int Overlap(Row row, Cover fill)
    {
        var first = -WidestGap;
        var last = first;
        for (var at = first; at <= row.Length / Fine.PerTenth; at++)
        {
            if (fill.Contains(row.At(at)))
                last = at;
            else if (at > last + Hole && at > 0)
                break;
        }

        return (10 * last) + 5 - HalfCell;
    }

    private readonly record struct Row(TapePoint From, TapePoint To)
    {
        /// <summary>Sixteenths of a tape unit.</summary>
        public long Length => Fine.Length(To - From);

        public Row Back => new(To, From);

        /// <summary>Twice its middle.</summary>
        public TapePoint Twice => From + To;

        /// <summary>What of its length lies across a way, 0 to 1: rows may lie askew.</summary>
        public double Across(TapePoint way)
        {
            var lengths = (double)Length * Fine.Length(way);
            return lengths == 0 ? 1 : Math.Abs(Fine.Cross(To - From, way)) * Fine.PerTenth * Fine.PerTenth / lengths;
        }

        /// <summary>A point so many tape units from its start, before it if below 0.</summary>
        public TapePoint At(int units)
        {
            var share = (double)units * Fine.PerTenth / Length;
            return new(Nearest(From.X + (share * (To.X - From.X))), Nearest(From.Y + (share * (To.Y - From.Y))));
        }

        private static int Nearest(double value) => (int)Math.Floor(value + 0.5);
    }
}
