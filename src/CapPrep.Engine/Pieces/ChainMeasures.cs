using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Sizes of rows, sixteenths of a tape unit.</summary>
/// <param name="Rows">How many rows.</param>
/// <param name="RowStitches">Stitches in all rows.</param>
/// <param name="Width">Median length of a row.</param>
/// <param name="Pitch">Median distance of every second row: of needle points on one side.</param>
/// <param name="Advance">How far the last row lies from the first, across the rows.</param>
/// <param name="Axis">Direction of the rows.</param>
internal sealed record ChainMeasures(int Rows, int RowStitches, int Width, int Pitch, int Advance, Axis Axis)
{
    public static ChainMeasures Of(Chain chain)
    {
        var rows = chain.Rows;
        var places = chain.Places;
        var lengths = new int[rows.Count];
        var pitches = new int[rows.Count - 2];
        var (stitches, axis) = (0, Axis.None);
        for (var k = 0; k < rows.Count; k++)
        {
            lengths[k] = (int)rows[k].Length;
            stitches += rows[k].Stitches;
            axis = axis.With(Axis.Of(rows[k].Chord));
            if (k >= 2)
                pitches[k - 2] = Math.Abs(places[k] - places[k - 2]);
        }

        return new(rows.Count, stitches, Median.Of(lengths), Median.Of(pitches), Math.Abs(places[^1]), axis);
    }

    /// <summary>The two side by side as one, weighted by their rows.</summary>
    public ChainMeasures With(ChainMeasures other) => new(
        Rows + other.Rows,
        RowStitches + other.RowStitches,
        Mean(Width, Rows, other.Width, other.Rows),
        Mean(Pitch, Rows, other.Pitch, other.Rows),
        Advance + other.Advance,
        Axis.With(other.Axis));

    private static int Mean(int one, int weight, int other, int otherWeight) =>
        (int)((((long)one * weight) + ((long)other * otherWeight)) / (weight + otherWeight));
}
