using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnOrder.Rows;

/// <summary>Which way the rows of a piece advance while it is sewn.</summary>
/// <param name="Sideways">Rank correlation of x with the order of sewing, -1 to 1.</param>
/// <param name="Upward">The same of y.</param>
/// <param name="Box">Around the middles of the rows, tape units on the cap.</param>
/// <param name="SpreadX">How far the middles lie from their mean sideways, rows weighted by their length: root mean square, tape units.</param>
internal sealed record RowAdvance(double Sideways, double Upward, Box Box, double SpreadX)
{
    private const int FewestRows = 8;

    /// <summary>Null for pieces with too few rows to tell.</summary>
    internal static RowAdvance? Of(Piece piece, Subject subject)
    {
        if (piece.RowsInOrder.Count < FewestRows)
            return null;
        TapePoint[] middles = [.. piece.RowsInOrder.Select(row => Middle(subject.Points.At(row.First), subject.Points.At(row.Last)))];
        return new(
            Rank([.. middles.Select(middle => middle.X)]),
            Rank([.. middles.Select(middle => middle.Y)]),
            middles.Skip(1).Aggregate(Box.Of(middles[0]), (box, middle) => box.Union(middle)),
            Spread([.. middles.Select(middle => middle.X)], [.. piece.RowsInOrder.Select(row => Fine.Length(subject.Points.At(row.Last) - subject.Points.At(row.First)))]));
    }

    private static double Spread(int[] values, long[] weights)
    {
        var sum = Math.Max(1, weights.Sum());
        var mean = values.Zip(weights).Sum(pair => (double)pair.First * pair.Second) / sum;
        return Math.Sqrt(values.Zip(weights).Sum(pair => (pair.First - mean) * (pair.First - mean) * pair.Second) / sum);
    }

    private static TapePoint Middle(TapePoint from, TapePoint to) => new((from.X + to.X) / 2, (from.Y + to.Y) / 2);

    /// <summary>Rank correlation (Spearman) of values with their places; ties share the mean of their ranks.</summary>
    internal static double Rank(int[] values)
    {
        var order = Enumerable.Range(0, values.Length).OrderBy(i => values[i]).ToArray();
        var ranks = new double[values.Length];
        for (var first = 0; first < order.Length;)
        {
            var next = first + 1;
            while (next < order.Length && values[order[next]] == values[order[first]])
                next++;
            for (var k = first; k < next; k++)
                ranks[order[k]] = (first + next - 1) / 2.0;
            first = next;
        }

        var mean = (values.Length - 1) / 2.0;
        double product = 0, ofRanks = 0, ofPlaces = 0;
        for (var i = 0; i < values.Length; i++)
        {
            product += (ranks[i] - mean) * (i - mean);
            ofRanks += (ranks[i] - mean) * (ranks[i] - mean);
            ofPlaces += (i - mean) * (i - mean);
        }

        return ofRanks == 0 ? 0 : product / Math.Sqrt(ofRanks * ofPlaces);
    }
}
