using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>
/// Columns and fills over the seam with nothing under them that bridges it. Earlier cover is underlay, in whatever color;
/// silent over foam and for what lies under later cover itself.
/// </summary>
internal static class NothingAcross
{
    internal static readonly Check Check = new(
        "seam.no-underlay",
        Needs.SeatedDesign,
        Find,
        report => $"{Figure.Count(report.WorstFirst.Count, "area crosses", "areas cross")} the center seam with nothing under the stitches that bridges it.");

    private const double LiesOnCover = 0.8;

    // How far from the seam what bridges it is looked for, and how much of an area lies there, mm and cells.
    private const double Beside = 8;
    private const int FewCells = 30;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (SeamView.Of(subject) is not { } seam)
            yield break;
        var across = rule.Parameter("acrossMm");
        foreach (var piece in subject.Reading.Pieces.Where(piece => IsJudged(piece, rule) && !subject.Foam.Contains(piece) && !seam.Hides(piece)))
        {
            if (!Crosses(seam, piece, across) || subject.Ground[piece].OnCover >= LiesOnCover || IsBridged(seam, piece, subject, across))
                continue;
            yield return new(subject.PlaceOf(piece.First, piece.Last)) { Level = piece.Class == StitchClass.Fill ? Severity.Warn : Severity.Note };
        }
    }

    private static bool IsJudged(Piece piece, RuleInForce rule) =>
        piece.Sure && (piece.Class == StitchClass.Fill || (piece.Class == StitchClass.Satin && piece.WidthMm >= rule.Parameter("columnFromMm")));

    private static bool Crosses(SeamView seam, Piece piece, double across) =>
        seam.Strip(piece.Blanket, -2 * across, -across).Take(FewCells).Count() == FewCells
        && seam.Strip(piece.Blanket, across, 2 * across).Take(FewCells).Count() == FewCells;

    /// <summary>What lies under an area bridges the seam together: underlay is often read in parts.</summary>
    private static bool IsBridged(SeamView seam, Piece piece, Subject subject, double across)
    {
        var lines = seam.PointsUnder(piece).Where(at => Math.Abs(at.X) <= 10 * Beside);
        var covers = subject.Ground[piece].Below.SelectMany(below => seam.Strip(below.Blanket.Common(piece.Blanket), -Beside, Beside));
        return IsOnBothSides([.. lines, .. covers], across);
    }

    private static bool IsOnBothSides(TapePoint[] points, double across) =>
        points.Any(at => at.X <= -10 * across) && points.Any(at => at.X >= 10 * across);
}
