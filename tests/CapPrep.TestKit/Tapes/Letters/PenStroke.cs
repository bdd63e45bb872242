using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>The middle line of a stroke at its size: along and above the base line, tape units.</summary>
internal sealed class PenStroke(IReadOnlyList<(double X, double Y)> points, bool isRing, double width)
{
    // Small letters are sewn in short stitches, and rows wider than this are split.
    private const int RunStitch = 12;
    private const double LongestRow = 35;

    public PenStroke Backward() => new([.. points.Reverse()], isRing, width);

    public (TapePoint First, TapePoint Last) Ends(TextWay way) =>
        (way.At(points[0].X, points[0].Y), way.At(points[^1].X, points[^1].Y));

    /// <summary>The needle points of a satin column along the stroke; rows over 3.5 mm are split when wanted.</summary>
    public IEnumerable<TapePoint> Satin(TextWay way, double pitch, bool isSplit)
    {
        var middle = WithSquareEnds();
        var length = LengthOf(middle);
        var rows = Math.Max(5, (int)Math.Round(2 * length / pitch));
        var last = Edge(middle, 0, length, rows);
        for (var row = 0; row <= rows; row++)
        {
            var next = Edge(middle, row, length, rows);
            if (isSplit && row > 0)
            {
                foreach (var point in Between(last, next, row))
                    yield return way.At(point.X, point.Y);
            }

            yield return way.At(next.X, next.Y);
            last = next;
        }
    }

    /// <summary>Out along the middle and back.</summary>
    public IEnumerable<TapePoint> Underlay(TextWay way)
    {
        TapePoint[] middle = [.. points.Select(point => way.At(point.X, point.Y))];
        return new Way(middle).InStitches(RunStitch).Concat(new Way([.. middle.Reverse()]).InStitches(RunStitch));
    }

    /// <summary>One line along the middle.</summary>
    public IEnumerable<TapePoint> Run(TextWay way)
    {
        var length = LengthOf(points);
        var steps = Math.Max(1, (int)Math.Ceiling(length / RunStitch));
        return Enumerable.Range(0, steps + 1).Select(k => Along(points, length * k / steps).At).Select(at => way.At(at.X, at.Y));
    }

    private static IEnumerable<(double X, double Y)> Between((double X, double Y) from, (double X, double Y) to, int row)
    {
        var stitches = (int)Math.Ceiling(Distance(from, to) / LongestRow);
        for (var k = 1; k < stitches; k++)
        {
            var share = (k + (((row % 4) - 1.5) / 8)) / stitches;
            yield return (from.X + (share * (to.X - from.X)), from.Y + (share * (to.Y - from.Y)));
        }
    }

    private (double X, double Y) Edge(IReadOnlyList<(double X, double Y)> middle, int row, double length, int rows)
    {
        var (at, direction) = Along(middle, length * row / rows);
        var side = row % 2 == 0 ? width / 2 : -width / 2;
        return (at.X - (side * direction.Y), at.Y + (side * direction.X));
    }

    /// <summary>Half a width longer at each end; rings stay as they are.</summary>
    private IReadOnlyList<(double X, double Y)> WithSquareEnds()
    {
        if (isRing)
            return points;
        var (first, last) = (Direction(points[1], points[0]), Direction(points[^2], points[^1]));
        return
        [
            (points[0].X + (first.X * width / 2), points[0].Y + (first.Y * width / 2)),
            .. points,
            (points[^1].X + (last.X * width / 2), points[^1].Y + (last.Y * width / 2)),
        ];
    }

    private static ((double X, double Y) At, (double X, double Y) Direction) Along(IReadOnlyList<(double X, double Y)> line, double way)
    {
        for (var leg = 1; ; leg++)
        {
            var (from, to) = (line[leg - 1], line[leg]);
            var length = Distance(from, to);
            if (way > length && leg < line.Count - 1)
            {
                way -= length;
                continue;
            }

            var direction = Direction(from, to);
            return ((from.X + (way * direction.X), from.Y + (way * direction.Y)), direction);
        }
    }

    private static double LengthOf(IReadOnlyList<(double X, double Y)> line) => line.Zip(line.Skip(1), Distance).Sum();

    private static (double X, double Y) Direction((double X, double Y) from, (double X, double Y) to)
    {
        var length = Distance(from, to);
        return length == 0 ? (0, 1) : ((to.X - from.X) / length, (to.Y - from.Y) / length);
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) =>
        Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y)));
}
