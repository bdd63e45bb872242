using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Groups;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>
/// Finds what stands for the tagline where no text lines are known: a straight group at the lower edge of the design,
/// wide and low, with something above it.
/// </summary>
internal static class TaglineFinder
{
    // House, in tape units: how near to the lower edge, how high at most, how wide at least, how straight.
    private const int NearEdge = 3 * Tenths.PerMillimeter;
    private const int Height = 10 * Tenths.PerMillimeter;
    private const int Width = 40 * Tenths.PerMillimeter;
    private const int Bow = 1 * Tenths.PerMillimeter;

    // House: a line of letters leaves no more than half of its width bare.
    private const int FilledPercent = 50;
    private const int Step = 2 * Tenths.PerMillimeter;

    /// <summary>Indices of the elements, sorted; empty when there is no such group.</summary>
    internal static IReadOnlyList<int> Find(IReadOnlyList<Element> elements, Placement placement, SewnAreas areas)
    {
        Box[] boxes = [.. elements.Select(element => placement.OnCap(element.Box))];
        if (boxes.Length == 0)
            return [];
        var edge = boxes.Min(box => box.Bottom);
        int[] group = [.. Enumerable.Range(0, boxes.Length).Where(item => IsLow(boxes[item], edge))];
        if (group.Length == 0 || group.Length == boxes.Length || !IsOneThing(elements, group, areas))
            return [];
        var width = group.Max(item => boxes[item].Right) - group.Min(item => boxes[item].Left);
        TapePoint[] lower = [.. group.SelectMany(item => LowerEdge(elements[item].Cover, placement))];
        return width >= Width && IsFilled(lower, width) && IsStraight(lower) ? group : [];
    }

    /// <summary>A line is of one color and sewn in one go; parts of a fill and the stroke under a word are no lines.</summary>
    private static bool IsOneThing(IReadOnlyList<Element> elements, int[] group, SewnAreas areas) =>
        group[^1] - group[0] + 1 == group.Length
        && group.All(item => elements[item].Block == elements[group[0]].Block)
        && areas.All(group).Count() == group.Length
        && !group.All(areas.IsUnderline);

    private static bool IsFilled(IEnumerable<TapePoint> lower, int width) =>
        lower.Select(point => StepOf(point.X)).Distinct().Count() * Step * 100L >= (long)width * FilledPercent;

    private static int StepOf(int x) => x >= 0 ? x / Step : -((Step - 1 - x) / Step);

    private static bool IsLow(Box box, int edge) => box.Bottom <= edge + NearEdge && box.Top <= edge + Height;

    /// <summary>The lower edge in the middle third lies on the line through those of the outer thirds.</summary>
    private static bool IsStraight(IReadOnlyList<TapePoint> edge)
    {
        var (left, right) = (edge.Min(point => point.X), edge.Max(point => point.X));
        var third = (right - left) / 3;
        return Level(edge, left, left + third) is not { } first
            || Level(edge, right - third, right) is not { } last
            || Level(edge, left + third, right - third) is not { } middle
            || Math.Abs((2 * middle) - first - last) < 2 * Bow;
    }

    /// <summary>Median height of the lower edge between two places.</summary>
    private static int? Level(IReadOnlyList<TapePoint> edge, int from, int to)
    {
        int[] heights = [.. edge.Where(point => point.X >= from && point.X <= to).Select(point => point.Y).Order()];
        return heights.Length == 0 ? null : heights[heights.Length / 2];
    }

    /// <summary>The lowest covered place in every 2 mm of width, as it lies on the cap.</summary>
    private static IEnumerable<TapePoint> LowerEdge(Cover cover, Placement placement)
    {
        var lowest = new SortedDictionary<int, TapePoint>();
        for (var row = cover.FirstRow; row < cover.FirstRow + cover.Rows; row++)
        {
            var bits = cover.Row(row);
            for (var column = 0; column < bits.Length * 64; column++)
            {
                if ((bits[column >> 6] >> (column & 63) & 1) == 0)
                    continue;
                var at = placement.OnCap(cover.Corner(cover.FirstColumn + column, row));
                if (!lowest.TryGetValue(StepOf(at.X), out var known) || at.Y < known.Y)
                    lowest[StepOf(at.X)] = at;
            }
        }

        return lowest.Values;
    }
}
