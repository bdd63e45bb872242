using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>One row of a border where it runs along the edge of its fill.</summary>
/// <param name="Part">The column it belongs to.</param>
/// <param name="StepMm">Way from the middle of the row before to its own: its share of the border's length.</param>
/// <param name="WidthMm">Width of the border here: the median of the rows about it.</param>
/// <param name="OverlapMm">How far the fill reaches under it from its inner edge; below 0: a gap.</param>
internal sealed record EdgeRow(Piece Part, double StepMm, double WidthMm, double OverlapMm)
{
    /// <summary>The value that a share of the length stays below.</summary>
    /// <param name="rows">At least one.</param>
    /// <param name="share">0 to 1.</param>
    /// <param name="value">What is measured of a row.</param>
    internal static double Quantile(IReadOnlyList<EdgeRow> rows, double share, Func<EdgeRow, double> value)
    {
        var rest = share * LengthMm(rows);
        EdgeRow[] least = [.. rows.OrderBy(value)];
        foreach (var row in least)
        {
            rest -= row.StepMm;
            if (rest < 0)
                return value(row);
        }

        return value(least[^1]);
    }

    internal static double LengthMm(IEnumerable<EdgeRow> rows) => rows.Sum(row => row.StepMm);
}
