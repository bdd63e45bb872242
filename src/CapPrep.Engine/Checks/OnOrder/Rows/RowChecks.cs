using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Engine.Checks.OnOrder.Rows;

/// <summary>
/// Areas whose rows push the cloth the wrong way: sideways across the seam, or down toward the brim. Rows that lie across
/// the seam and advance upward are right.
/// </summary>
internal static class RowChecks
{
    internal static readonly Check AcrossSeam = new(
        "order.across-seam",
        Needs.SeatedDesign,
        FindAcross,
        report => $"{Figure.Count(report.WorstFirst.Count, "area is", "areas are")} sewn across the seam from one side to the other, up to {Figure.Mm(report.Measured)} wide.");

    internal static readonly Check Downward = new(
        "order.rows-downward",
        Needs.SeatedDesign,
        FindDownward,
        report => $"{Figure.Count(report.WorstFirst.Count, "area is sewn from its top down", "areas are sewn from their tops down")}, up to {Figure.Mm(report.Measured)} tall.");

    internal static readonly IReadOnlyList<Check> All = [AcrossSeam, Downward];

    private const double LiesOn = 0.7;

    private static IEnumerable<Occurrence> FindAcross(Subject subject, RuleInForce rule)
    {
        if (subject.Seated.Zone.OriginXMm is not 0)
            yield break;
        var letters = subject.TextLines.SelectMany(line => line.Elements).ToHashSet();
        var held = TackDown.Find(subject.Reading, subject.Stitches).ToHashSet();
        foreach (var piece in Areas(subject).Where(piece => !letters.Contains(piece.Element) && !held.Contains(piece.Element)))
        {
            var box = subject.Points.BoxOf(piece.First, piece.Last).ToMillimeters();
            if (box.Height < rule.Parameter("heightAtLeastMm") || RowAdvance.Of(piece, subject) is not { } rows)
                continue;
            var side = 10 * rule.Parameter("eachSideMm");
            if (Math.Abs(rows.Sideways) >= rule.Parameter("rankAtLeast") && rows.SpreadX >= 10 * rule.Parameter("spreadShare") * box.Width && rows.Box.Left <= -side && rows.Box.Right >= side)
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = box.Width };
        }
    }

    private static IEnumerable<Occurrence> FindDownward(Subject subject, RuleInForce rule)
    {
        foreach (var piece in Areas(subject).Where(piece => piece.Last - piece.First >= rule.Parameter("stitchesAtLeast")))
        {
            if (subject.Ground[piece].OnCover >= LiesOn || RowAdvance.Of(piece, subject) is not { } rows)
                continue;
            var height = (rows.Box.Top - rows.Box.Bottom) / 10.0;
            if (rows.Upward <= -rule.Parameter("rankAtLeast") && rule.Limits.PassedBy(height) is not null)
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = height };
        }
    }

    private static IEnumerable<Piece> Areas(Subject subject) =>
        subject.Reading.Pieces.Where(piece => piece is { Class: StitchClass.Satin or StitchClass.Fill, Sure: true });
}
