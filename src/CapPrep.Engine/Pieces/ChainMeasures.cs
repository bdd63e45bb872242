using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Sizes of rows, sixteenths of a tape unit.</summary>
/// <param name="Rows">How many rows.</param>
/// <param name="RowStitches">Stitches in all rows.</param>
/// <param name="Split">Rows of more than one stitch.</param>
/// <param name="Even">Those of them with stitches of about one length.</param>
/// <param name="Width">Median length of a row.</param>
/// <param name="Column">
/// Width of the column: the median, or the upper quartile in a curve where every other row stops short of the inner
/// edge.
/// </param>
/// <param name="Pitch">Median distance of every second row: of needle points on one side.</param>
/// <param name="Advance">How far the last row lies from the first, across the rows.</param>
/// <param name="Axis">Direction of the rows.</param>
internal sealed record ChainMeasures(
    int Rows, int RowStitches, int Split, int Even, int Width, int Column, int Pitch, int Advance, Axis Axis)
{
    // Rows that agree less on a direction than this turn.
    private const int TurningBelow = 80;

    // A short row is this much shorter than both its neighbors, percent; one row in ten shows that it is done on purpose.
    private const int ShortPercent = 85;
    private const int ShortRowsShare = 10;

    /// <summary>The column turns: its rows have no common direction.</summary>
    public bool IsTurning => Axis.AgreeingPercent < TurningBelow;

    public static ChainMeasures Of(Chain chain)
    {
        var rows = chain.Rows;
        var places = chain.Places;
        var lengths = new int[rows.Count];
        var pitches = new int[rows.Count - 2];
        var (stitches, split, even, axis) = (0, 0, 0, Axis.None);
        for (var k = 0; k < rows.Count; k++)
        {
            lengths[k] = (int)rows[k].Length;
            stitches += rows[k].Stitches;
            split += rows[k].Stitches > 1 ? 1 : 0;
            even += rows[k].Stitches > 1 && rows[k].IsEven ? 1 : 0;
            axis = axis.With(Axis.Of(rows[k].Chord));
            if (k >= 2)
                pitches[k - 2] = Math.Abs(places[k] - places[k - 2]);
        }

        var width = Median.Of(lengths);
        var all = new ChainMeasures(rows.Count, stitches, split, even, width, width, Median.Of(pitches), Math.Abs(places[^1]), axis);
        return all.IsTurning && HasShortRows(lengths) ? all with { Column = Median.UpperQuartile(lengths) } : all;
    }

    /// <summary>The two side by side as one, weighted by their rows.</summary>
    public ChainMeasures With(ChainMeasures other) => new(
        Rows + other.Rows,
        RowStitches + other.RowStitches,
        Split + other.Split,
        Even + other.Even,
        Mean(Width, Rows, other.Width, other.Rows),
        Mean(Column, Rows, other.Column, other.Rows),
        Mean(Pitch, Rows, other.Pitch, other.Rows),
        Advance + other.Advance,
        Axis.With(other.Axis));

    private static bool HasShortRows(int[] lengths) => ShortRowsShare * Enumerable.Range(1, Math.Max(0, lengths.Length - 2))
        .Count(k => 100L * lengths[k] < (long)ShortPercent * Math.Min(lengths[k - 1], lengths[k + 1])) >= lengths.Length;

    private static int Mean(int one, int weight, int other, int otherWeight) =>
        (int)((((long)one * weight) + ((long)other * otherWeight)) / (weight + otherWeight));
}
