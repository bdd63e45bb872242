using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>Satin columns along a center line.</summary>
internal static class SatinLine
{
    /// <summary>Two rails half the width to either side of a line; at a bend they meet in its bisector.</summary>
    /// <param name="line">At least two points, tape units.</param>
    /// <param name="widths">Width of the column at each point, tape units.</param>
    public static Column Along(IReadOnlyList<TapePoint> line, IReadOnlyList<int> widths) => new(
        new([.. line.Select((_, i) => Beside(line, i, widths[i] / 2.0))]),
        new([.. line.Select((_, i) => Beside(line, i, -widths[i] / 2.0))]))
    {
        UnderlayStitch = 20,
    };

    private static TapePoint Beside(IReadOnlyList<TapePoint> line, int i, double distance)
    {
        var (before, here, after) = (line[Math.Max(0, i - 1)], line[i], line[Math.Min(line.Count - 1, i + 1)]);
        var (inX, inY) = Direction(before, before == here ? after : here);
        var (outX, outY) = Direction(after == here ? before : here, after);
        var (x, y) = (inX + outX, inY + outY);
        // 1 + cosine of the bend: how much farther out the bisector is; a hairpin is cut at twice the width.
        var reach = distance / Math.Max(0.5, ((x * x) + (y * y)) / 2);
        return here + new TapePoint((int)Math.Round(-y * reach), (int)Math.Round(x * reach));
    }

    private static (double X, double Y) Direction(TapePoint from, TapePoint to)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y;
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        return (dx / length, dy / length);
    }
}
