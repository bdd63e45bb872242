using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>The satin over the edge of the fabric: how wide it is, and how far it reaches past the cut edge.</summary>
internal static class AppliqueCover
{
    // A fifth of the rows may reach less far: corners.
    private const double ReachShare = 0.2;

    // As many rows are looked at, spread over the cover, and no longer line is followed.
    private const int MostRows = 500;
    private const int MostLegs = 4000;

    internal static readonly Check Width = new(
        "applique.cover",
        Needs.SeatedDesign,
        (subject, _) => Covers(subject).Select(part => new Occurrence(PlaceOf(subject, part.Piece)) { Measured = part.Rows.WidthMm(0.5) }),
        report => $"The satin over the edge is {Figure.Mm(report.Measured)} wide; at least {Figure.Mm(report.LimitValue)} is wanted.");

    /// <summary>The cut edge is the line that holds the fabric when it is trimmed there, else the placement line.</summary>
    internal static readonly Check Edge = new(
        "applique.edge",
        Needs.SeatedDesign,
        FindEdge,
        report => $"The satin reaches only {Figure.Mm(Math.Max(0, report.Measured))} past one side of the cut edge; {Figure.Mm(report.LimitValue)} on both sides is wanted.");

    private static IEnumerable<(AppliqueShape Shape, Piece Piece, ColumnRows Rows)> Covers(Subject subject) =>
        from shape in subject.AppliqueShapes
        where shape.HasStop
        from piece in shape.Cover
        select (shape, piece, ColumnRows.Of(piece, subject.Stitches));

    private static IEnumerable<Occurrence> FindEdge(Subject subject, RuleInForce rule) => Covers(subject)
        .Select(part => (part.Piece, Reach: ReachMm(subject, CutEdge(part.Shape), part.Rows)))
        .Where(part => part.Reach is not null)
        .Select(part => new Occurrence(PlaceOf(subject, part.Piece)) { Measured = part.Reach });

    private static Place PlaceOf(Subject subject, Piece piece) => subject.PlaceOf(piece.First, piece.Last) with { Elements = [piece.Element + 1] };

    private static Interval CutEdge(AppliqueShape shape) =>
        shape.Hold is { IsLine: true, IsClosed: true } hold && shape.Cover[0].Block > hold.Block ? hold.Interval : shape.Placement.Interval;

    /// <summary>What most rows that meet the edge reach past it on their shorter side; null when none meets it.</summary>
    private static double? ReachMm(Subject subject, Interval edge, ColumnRows rows)
    {
        if (edge.Count > MostLegs)
            return null;
        var step = 1 + (rows.Count / MostRows);
        double[] reaches = [.. Enumerable.Range(0, rows.Count).Where(row => row % step == 0).Select(row => ReachOf(subject, edge, rows[row])).OfType<double>().Order()];
        return reaches.Length == 0 ? 0 : reaches[(int)(ReachShare * reaches.Length)] / Tenths.PerMillimeter;
    }

    private static double? ReachOf(Subject subject, Interval edge, ColumnRow row)
    {
        for (var point = edge.First; point < edge.Last; point++)
        {
            if (ShareWhereCrossed(row, subject.Stitches.At(point), subject.Stitches.At(point + 1)) is { } share)
                return Math.Min(share, 1 - share) * row.Length;
        }

        return null;
    }

    /// <summary>Where on a row, as share of its length, a stitch crosses it.</summary>
    private static double? ShareWhereCrossed(ColumnRow row, TapePoint from, TapePoint to)
    {
        var leg = to - from;
        var across = Fine.Cross(row.Chord, leg);
        if (across == 0)
            return null;
        var (onRow, onLeg) = ((double)Fine.Cross(from - row.From, leg) / across, (double)Fine.Cross(from - row.From, row.Chord) / across);
        return onRow is >= 0 and <= 1 && onLeg is >= 0 and <= 1 ? onRow : null;
    }
}
