using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>
/// Fills whose rows run along the seam: they sink into it and leave a line. Silent where other stitches below lie across
/// them, under later cover, over foam, and for fills without one direction.
/// </summary>
internal static class FillParallel
{
    internal static readonly Check Check = new(
        "seam.fill-parallel",
        Needs.SeatedDesign,
        Find,
        report => $"The rows of {Figure.Count(report.WorstFirst.Count, "fill")} run along the center seam and sink into it, over {Figure.Plain(report.Measured, 0)} mm2.");

    private const double LiesOn = 0.7;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (SeamView.Of(subject) is not { } seam)
            yield break;
        foreach (var piece in subject.Reading.Pieces.Where(piece => IsAlong(piece) && !subject.Foam.Contains(piece) && !seam.Hides(piece)))
        {
            var strip = seam.Strip(piece.Blanket, -rule.Parameter("stripMm"), rule.Parameter("stripMm")).ToArray();
            var area = (double)strip.Length / Cover.CellsPerSquareMillimeter;
            if (rule.Limits.PassedBy(area) is not null && HeightMm(strip) >= rule.Parameter("heightAtLeastMm") && !IsCrossed(piece, subject, seam))
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = area };
        }
    }

    /// <summary>Within 15 degrees of upright.</summary>
    private static bool IsAlong(Piece piece) =>
        piece is { Class: StitchClass.Fill, Sure: true, Axis.IsDirected: true } && Math.Abs(piece.Axis.Degrees - 90) <= 15;

    private static double HeightMm(TapePoint[] strip) => (strip.Max(at => at.Y) - strip.Min(at => at.Y)) / 10.0;

    private static bool IsCrossed(Piece piece, Subject subject, SeamView seam)
    {
        if (subject.Ground[piece].Below.Any(below => LiesAcross(below, piece) && below.Blanket.Shared(piece.Blanket) >= LiesOn * piece.Blanket.Area))
            return true;
        var steps = seam.StepsUnder(piece).Select(Axis.Of).Aggregate(Axis.None, (sum, next) => sum.With(next));
        return steps.IsDirected && !steps.IsWithin30Degrees(piece.Axis) && Fine.Millimeters(steps.Length) >= ThreadUnder * piece.Blanket.SquareMillimeters;
    }

    private static bool LiesAcross(Piece below, Piece piece) => below.Axis.IsDirected && !below.Axis.IsWithin30Degrees(piece.Axis);

    // One underlay does not hold rows up, two that cross do: mm on each mm2 (house).
    private const double ThreadUnder = 0.6;
}
