using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>
/// Ends of columns over foam. An end is closed where needle holes cut the foam off along it, or where another column
/// lies over it; pointed ends and the ends of a ring close themselves.
/// </summary>
internal static class FoamEnds
{
    // House, tape units: how near the end a hole still cuts, across it and along it; what is a point; where a ring closes.
    private const int AcrossEnd = 12;
    private const int AlongEnd = 6;
    private const int PointedTo = 20;
    private const int RingWithin = 15;

    // So near a row lies over the place; the end is looked at every half millimeter. Tape units.
    private const int OverRow = 3;
    private const int Step = 5;

    internal static readonly Check Open = new(
        "foam.open-end",
        Needs.SeatedDesign,
        (subject, _) => All(subject).Select(end => new Occurrence(PlaceOf(subject, end)) { Measured = end.ClosedShare }),
        report => $"{Figure.Count(report.WorstFirst.Count, "column end")} over foam stay open: stitches across close {Figure.Plain(100 * report.Measured, 0)} % of the width, {Figure.Plain(100 * report.LimitValue, 0)} % are wanted.");

    /// <summary>A closed end on the seam: its holes and the seam's own lie on one line.</summary>
    internal static readonly Check OnSeam = new(
        "foam.across-seam",
        Needs.SeatedDesign,
        FindOnSeam,
        report => $"{Figure.Count(report.WorstFirst.Count, "closed column end lies", "closed column ends lie")} along the center seam, {Figure.Mm(report.Measured)} from it.");

    private static IEnumerable<Occurrence> FindOnSeam(Subject subject, RuleInForce rule) => subject.LiesOnFront
        ? All(subject)
            .Where(end => end.ClosedShare >= rule.Parameter("closedShareAtLeast"))
            .Select(end => new Occurrence(PlaceOf(subject, end)) { Measured = FromSeamMm(subject, end.Row) })
        : [];

    private static Place PlaceOf(Subject subject, ColumnEnd end) =>
        subject.PlaceOf(end.Row.Interval.First, end.Row.Interval.Last) with { Elements = [end.Column.Piece.Element + 1] };

    /// <summary>How far the farther corner of an end lies from the seam.</summary>
    private static double FromSeamMm(Subject subject, ColumnRow end) =>
        Math.Max(Math.Abs(XOnCap(subject, end.Interval.First)), Math.Abs(XOnCap(subject, end.Interval.Last))) / (double)Tenths.PerMillimeter;

    private static int XOnCap(Subject subject, int point) => subject.InFrame(subject.Points.At(point)).X;

    private static IEnumerable<ColumnEnd> All(Subject subject)
    {
        var holes = HolesOf(subject);
        return subject.Foam.Shaping.SelectMany(column => RowsAtEnds(column).Select(row => new ColumnEnd(column, row, ClosedShare(subject, holes, column, row))));
    }

    private static IEnumerable<ColumnRow> RowsAtEnds(FoamColumn column)
    {
        var (first, last) = (column.Rows[0], column.Rows[column.Rows.Count - 1]);
        var isRing = (first.From + first.To - last.From - last.To).Reach <= 2 * RingWithin;
        return isRing ? [] : new[] { first, last }.Where(row => row.Length > PointedTo);
    }

    private static double ClosedShare(Subject subject, (int X, int Point)[] holes, FoamColumn column, ColumnRow end)
    {
        var cuts = CutsAlong(subject, holes, column, end);
        var steps = Math.Max(1, (int)(end.Length / Step));
        var around = Box.Of(end.From).Union(end.To).Grown(OverRow);
        var rows = subject.Foam.Shaping
            .Where(other => !ReferenceEquals(other, column) && other.Box.Meets(around))
            .SelectMany(other => other.Rows.All.Where(row => Box.Of(row.From).Union(row.To).Meets(around)))
            .ToArray();
        var closed = Enumerable.Range(0, steps + 1).Count(step =>
            cuts.Any(cut => Math.Abs(cut - (end.Length * step / steps)) <= AlongEnd)
            || rows.Any(row => row.DistanceTo(Between(end, step, steps)) <= OverRow));
        return (double)closed / (steps + 1);
    }

    private static TapePoint Between(ColumnRow end, int step, int steps) =>
        end.From + new TapePoint(end.Chord.X * step / steps, end.Chord.Y * step / steps);

    /// <summary>Needle points over foam, by x.</summary>
    private static (int X, int Point)[] HolesOf(Subject subject) =>
        [.. Enumerable.Range(0, subject.Stitches.Count).Where(subject.Foam.ContainsPoint).Select(point => (subject.Stitches.X[point], point)).Order()];

    /// <summary>Where along the end holes of other stitches lie near it, tape units.</summary>
    private static double[] CutsAlong(Subject subject, (int X, int Point)[] holes, FoamColumn column, ColumnRow end)
    {
        var reach = Box.Of(end.From).Union(end.To).Grown(AcrossEnd);
        var first = Array.BinarySearch(holes, (reach.Left, -1));
        return [.. holes.Skip(first < 0 ? ~first : first)
            .TakeWhile(hole => hole.X <= reach.Right)
            .Where(hole => hole.Point < column.Interval.First || hole.Point > column.Interval.Last)
            .Select(hole => subject.Stitches.At(hole.Point) - end.From)
            .Where(from => Math.Abs(Fine.Cross(end.Chord, from)) <= AcrossEnd * end.Length)
            .Select(from => Fine.Dot(from, end.Chord) / end.Length)
            .Where(along => along >= -AlongEnd && along <= end.Length + AlongEnd)];
    }

    private sealed record ColumnEnd(FoamColumn Column, ColumnRow Row, double ClosedShare);
}
