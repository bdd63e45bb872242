using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Cuts a strand into strokes where it turns by more than 75 degrees; stitches of no length do not count.</summary>
internal static class StrokeCutter
{
    // 1 / 15 is the square of the cosine of 75 degrees.
    private const int TurnLimit = 15;

    // A step to the next row is shorter than 1.6 mm.
    private const int LongestStep = 16 * Fine.PerTenth;

    // Steps up to 0.4 mm lead from row to row, they split none.
    private const int ShortestStitch = 4 * Fine.PerTenth;

    public static List<Stroke> Cut(StitchSequence stitches, Interval strand)
    {
        var strokes = new List<Stroke>();
        var open = Start(stitches, strand.First);
        var direction = TapePoint.Origin;
        for (var i = strand.First + 1; i <= strand.Last; i++)
        {
            var step = stitches.At(i) - stitches.At(i - 1);
            if (step == TapePoint.Origin)
            {
                open = open with { Last = i };
                continue;
            }

            if (direction != TapePoint.Origin && Turns(direction, step))
            {
                strokes.Add(open);
                open = Start(stitches, i - 1);
            }

            open = Longer(open, i, stitches.At(i));
            direction = step;
        }

        if (open.Stitches > 0)
            strokes.Add(open);
        return WithoutSteps(WithoutBridges(stitches, strokes));
    }

    private static Stroke Start(StitchSequence stitches, int first) =>
        new(first, first, stitches.At(first), stitches.At(first), 0, 0, long.MaxValue);

    private static Stroke Longer(in Stroke stroke, int last, TapePoint to)
    {
        var length = Fine.Length(to - stroke.To);
        return stroke with
        {
            Last = last,
            To = to,
            Stitches = stroke.Stitches + 1,
            Arc = stroke.Arc + length,
            Shortest = length > ShortestStitch ? Math.Min(stroke.Shortest, length) : stroke.Shortest,
        };
    }

    private static bool Turns(TapePoint a, TapePoint b)
    {
        var dot = Fine.Dot(a, b);
        return dot <= 0 || dot * dot * TurnLimit < Fine.Square(a) * Fine.Square(b);
    }

    /// <summary>
    /// The strokes with those in single stitches that are more than twice as long as the rows before and behind them:
    /// last row of a column, the way to the next one, and its first row.
    /// </summary>
    private static List<Stroke> WithoutBridges(StitchSequence stitches, List<Stroke> strokes)
    {
        var rows = new List<Stroke>(strokes.Count);
        for (var k = 0; k < strokes.Count; k++)
        {
            if (k > 0 && k + 1 < strokes.Count && IsBridge(strokes[k - 1], strokes[k], strokes[k + 1]))
                rows.AddRange(Singles(stitches, strokes[k]));
            else
                rows.Add(strokes[k]);
        }

        return rows;
    }

    private static bool IsBridge(in Stroke row, in Stroke stroke, in Stroke next) =>
        stroke.Stitches > 1
        && stroke.Length > 2 * Math.Max(row.Length, next.Length)
        && stroke.IsAgainst(row) && stroke.IsAgainst(next);

    private static IEnumerable<Stroke> Singles(StitchSequence stitches, Stroke stroke)
    {
        var from = stroke.First;
        for (var i = stroke.First + 1; i <= stroke.Last; i++)
        {
            if (i < stroke.Last && stitches.At(i + 1) == stitches.At(i))
                continue;
            yield return Longer(Start(stitches, from), i, stitches.At(i));
            from = i;
        }
    }

    /// <summary>The strokes without the single short stitches that lead from a row to the one sewn back beside it.</summary>
    private static List<Stroke> WithoutSteps(List<Stroke> strokes)
    {
        var rows = new List<Stroke>(strokes.Count);
        for (var i = 0; i < strokes.Count; i++)
        {
            var isStep = rows.Count > 0 && i + 1 < strokes.Count && IsStep(rows[^1], strokes[i], strokes[i + 1]);
            if (!isStep)
                rows.Add(strokes[i]);
        }

        return rows;
    }

    private static bool IsStep(in Stroke row, in Stroke step, in Stroke next) =>
        step.Stitches == 1
        && row.Last == step.First
        && step.Length < LongestStep
        && 2 * step.Length < Math.Min(row.Length, next.Length)
        && row.IsAgainst(next);
}
