using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>
/// Gaps between shapes over foam: where they are too narrow, the foam between them cannot be picked out. Columns that
/// touch are one shape.
/// </summary>
internal static class FoamGaps
{
    // House, tape units: columns so near are one shape, and outlines are looked at every half millimeter.
    private const int Touch = 5;
    private const int Step = 5;

    // Outlines are sorted into squares as wide as any gap that is of interest: 3 mm.
    private const int Square = 30;

    internal static readonly Check Check = new(
        "foam.gap",
        Needs.SeatedDesign,
        Find,
        report => $"{Figure.Count(report.WorstFirst.Count, "gap")} between shapes over foam: {Figure.Mm(report.Measured)} is too narrow; at least {Figure.Mm(report.LimitValue)} is wanted.");

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var columns = subject.Foam.Shaping;
        var gaps = GapsOf(columns);
        var shapes = Shapes(columns.Count, gaps.Where(gap => gap.Distance <= Touch || columns[gap.One].Cover.Shared(columns[gap.Other].Cover) > 0));
        return gaps
            .Where(gap => shapes[gap.One] != shapes[gap.Other])
            .GroupBy(gap => (Math.Min(shapes[gap.One], shapes[gap.Other]), Math.Max(shapes[gap.One], shapes[gap.Other])), (_, between) => between.MinBy(gap => gap.Distance)!)
            .Select(gap => new Occurrence(PlaceOf(subject, columns[gap.One], columns[gap.Other])) { Measured = gap.Distance / Tenths.PerMillimeter });
    }

    private static Place PlaceOf(Subject subject, FoamColumn one, FoamColumn other) =>
        other.PlaceIn(subject) with { Elements = [.. new[] { one.Piece.Element + 1, other.Piece.Element + 1 }.Distinct().Order()] };

    /// <summary>The least distance of every two columns that come near each other.</summary>
    private static IReadOnlyList<Gap> GapsOf(IReadOnlyList<FoamColumn> columns)
    {
        var squares = new Dictionary<(int, int), List<(int Column, TapePoint At)>>();
        var gaps = new SortedDictionary<(int, int), double>();
        for (var column = 0; column < columns.Count; column++)
        {
            foreach (var at in OutlineOf(columns[column]))
                Compare(column, at);
            foreach (var at in OutlineOf(columns[column]))
                Put(column, at);
        }

        return [.. gaps.Select(pair => new Gap(pair.Key.Item1, pair.Key.Item2, pair.Value))];

        void Put(int column, TapePoint at)
        {
            if (!squares.TryGetValue(SquareOf(at), out var square))
                squares.Add(SquareOf(at), square = []);
            if (square.Count == 0 || square[^1].Column != column || (square[^1].At - at).Reach > 1)
                square.Add((column, at));
        }

        void Compare(int column, TapePoint at)
        {
            var (x, y) = SquareOf(at);
            for (var near = 0; near < 9; near++)
            {
                if (!squares.TryGetValue((x - 1 + (near / 3), y - 1 + (near % 3)), out var square))
                    continue;
                foreach (var other in square)
                    Note((other.Column, column), Math.Sqrt(Fine.Square(other.At - at)));
            }
        }

        void Note((int, int) pair, double distance)
        {
            if (!gaps.TryGetValue(pair, out var least) || distance < least)
                gaps[pair] = distance;
        }
    }

    private static (int X, int Y) SquareOf(TapePoint at) => ((int)Math.Floor((double)at.X / Square), (int)Math.Floor((double)at.Y / Square));

    /// <summary>Both sides and both ends.</summary>
    private static IEnumerable<TapePoint> OutlineOf(FoamColumn column) => column.Rows.All
        .SelectMany(row => new[] { row.From, row.To })
        .Concat(Along(column.Rows[0]))
        .Concat(Along(column.Rows[column.Rows.Count - 1]));

    private static IEnumerable<TapePoint> Along(ColumnRow row)
    {
        var steps = Math.Max(1, (int)(row.Length / Step));
        return Enumerable.Range(0, steps + 1).Select(step => row.From + new TapePoint(row.Chord.X * step / steps, row.Chord.Y * step / steps));
    }

    /// <summary>For each column the first one of its shape.</summary>
    private static int[] Shapes(int count, IEnumerable<Gap> touching)
    {
        int[] shapes = [.. Enumerable.Range(0, count)];
        foreach (var gap in touching)
        {
            var (one, other) = (shapes[gap.One], shapes[gap.Other]);
            for (var column = 0; column < count; column++)
                shapes[column] = shapes[column] == Math.Max(one, other) ? Math.Min(one, other) : shapes[column];
        }

        return shapes;
    }

    /// <param name="One">The column sewn first.</param>
    /// <param name="Other">The column sewn later.</param>
    /// <param name="Distance">Tape units.</param>
    private sealed record Gap(int One, int Other, double Distance);
}
