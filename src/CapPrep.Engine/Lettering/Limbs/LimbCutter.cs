using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>Cuts strokes into limbs: where the thread goes on somewhere else, and where the stroke turns up or down.</summary>
internal sealed class LimbCutter
{
    // A turn counts when the stroke goes back by 0.5 mm, or by a third of its width.
    private const int LeastTurn = 5 * Fine.PerTenth;

    // Rows whose middles are farther apart than 0.8 mm and half their length do not belong to one stroke, nor do those of
    // which one is more than twice as long and 0.8 mm.
    private const int LeastGap = 8 * Fine.PerTenth;

    // Smaller than this in all directions is a tie or a stray stitch, tape units.
    private const int Least = 5;

    // Fewer rows lead from one stroke to another.
    private const int FewestRows = 3;

    // Few rows that reach three times as far across as they advance are a line sewn to and fro.
    private const int FewRows = 6;
    private const int MostWidths = 3;

    private readonly List<Limb> _limbs = [];
    private int _chain;

    public IReadOnlyList<Limb> Limbs => _limbs;

    /// <summary>Rows of columns in sewing order.</summary>
    public void AddRows(IReadOnlyList<Knot> rows)
    {
        var first = 0;
        for (var next = 1; next <= rows.Count; next++)
        {
            if (next < rows.Count && IsOneStroke(rows[next - 1], rows[next]))
                continue;
            AddChain(WithoutWayOn([.. rows.Skip(first).Take(next - first)]));
            first = next;
        }
    }

    /// <summary>Needle points of a line without a float.</summary>
    public void AddLine(IReadOnlyList<Knot> points) => AddChain(points);

    /// <summary>An area as one limb, upright in its box.</summary>
    public void AddArea(IReadOnlyList<Knot> rows, int width)
    {
        var hull = Hull.Of(rows.SelectMany(row => new[] { row.One, row.Other }));
        var box = BoxOf(hull);
        Put(rows, hull, new(2 * box.Center.X, 2 * box.Bottom), new(2 * box.Center.X, 2 * box.Top), width);
        _chain++;
    }

    private static bool IsOneStroke(in Knot row, in Knot next)
    {
        var apart = Fine.Length(next.DoubleMiddle - row.DoubleMiddle) / 2;
        var (less, more) = (Math.Min(row.Length, next.Length), Math.Max(row.Length, next.Length));
        return apart <= Math.Max(LeastGap, less / 2) && more <= (2 * less) + LeastGap;
    }

    /// <summary>Without a last row of several stitches that goes on to the next stroke: it is half as long again as most.</summary>
    private static IReadOnlyList<Knot> WithoutWayOn(IReadOnlyList<Knot> chain) =>
        chain[^1].Stitches.Count > 2 && 2 * chain[^1].Length > 3 * Median.Of([.. chain.Select(knot => knot.Length)])
            ? [.. chain.SkipLast(1)]
            : chain;

    private void AddChain(IReadOnlyList<Knot> chain)
    {
        var width = Median.Of([.. chain.Select(knot => knot.Length)]);
        var turn = Math.Max(LeastTurn, width / 3) * 2 / Fine.PerTenth;
        var first = 0;
        foreach (var end in Turns(chain, turn).Append(chain.Count - 1))
        {
            Add([.. chain.Skip(first).Take(end - first + 1)]);
            first = end;
        }

        _chain++;
    }

    /// <summary>Knots at which the middle line turns up or down; it must go back by a length for that, twice tape units.</summary>
    private static IEnumerable<int> Turns(IReadOnlyList<Knot> chain, int turn)
    {
        var (low, high, way) = (0, 0, 0);
        for (var k = 1; k < chain.Count; k++)
        {
            var y = chain[k].DoubleMiddle.Y;
            if (way >= 0 && chain[high].DoubleMiddle.Y - y >= turn)
            {
                if (way > 0)
                    yield return high;
                (way, low) = (-1, k);
            }
            else if (way <= 0 && y - chain[low].DoubleMiddle.Y >= turn)
            {
                if (way < 0)
                    yield return low;
                (way, high) = (1, k);
            }

            if (y > chain[high].DoubleMiddle.Y)
                high = k;
            if (y < chain[low].DoubleMiddle.Y)
                low = k;
        }
    }

    private void Add(IReadOnlyList<Knot> knots)
    {
        var hull = Hull.Of(knots.SelectMany(knot => new[] { knot.One, knot.Other }));
        var (one, other) = (knots[0].DoubleMiddle, knots[^1].DoubleMiddle);
        var (lower, upper) = one.Y <= other.Y ? (one, other) : (other, one);
        Put(knots, hull, lower, upper, Median.Of([.. knots.Select(knot => knot.Length)]));
    }

    private void Put(IReadOnlyList<Knot> knots, IReadOnlyList<TapePoint> hull, TapePoint lower, TapePoint upper, int width)
    {
        var box = BoxOf(hull);
        if ((box.Width < Least && box.Height < Least) || (width > 0 && !IsStroke(knots, width)))
            return;
        _limbs.Add(new()
        {
            Index = _limbs.Count,
            Chain = _chain,
            Stitches = [new(knots[0].Stitches.First, knots[^1].Stitches.Last)],
            Hull = hull,
            Box = box,
            Center = box.Center,
            DoubleLower = lower,
            DoubleUpper = upper,
            Width = width,
        });
    }

    /// <summary>Some rows side by side, not a line that was sewn to and fro.</summary>
    private static bool IsStroke(IReadOnlyList<Knot> rows, int width) =>
        rows.Count >= FewestRows
        && (rows.Count > FewRows || MostWidths * Fine.Length(rows[^1].DoubleMiddle - rows[0].DoubleMiddle) / 2 >= width);

    private static Box BoxOf(IReadOnlyList<TapePoint> points) => points.Select(Box.Of).Aggregate((sum, box) => sum.Union(box));
}
