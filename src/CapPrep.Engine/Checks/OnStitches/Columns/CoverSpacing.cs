using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// Top satin and fill so open that the cloth shows, or so dense that it cuts it (house; fact rows L35 to L39). Silent
/// over foam, for metallic thread, for blends of colors, and for rows that shade: on closed cover, or very far apart. Open is how far rows
/// gape; dense is how much thread lies there, so rows that turn in short steps are no denser than those that meet.
/// </summary>
internal static class CoverSpacing
{
    internal static readonly Check Check = new("stitch.cover", Needs.SeatedDesign, Find, Say);

    // Rows of one spacing lay about twice its inverse of thread on an area; much less is no dense area.
    private const double LeastThread = 1.4;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var (least, most) = (rule.Parameter("atLeastMm") - rule.Parameter("readToMm"), rule.Parameter("atMostMm") + rule.Parameter("readToMm"));
        var blends = new Blends(subject, most);
        foreach (var piece in SeenAreas.WithDoubtful(subject).Where(piece => IsJudged(piece, subject, rule)))
        {
            var opening = RowOpenings.OfMm(piece, subject.Stitches);
            if (opening > MostOn(subject, rule, piece, most) && opening <= rule.Parameter("shadingFromMm") && !blends.Contains(piece))
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = opening };
            else if (opening is not null && IsDense(piece, least))
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = piece.PitchMm };
        }
    }

    private static bool IsDense(Piece piece, double least) => piece.PitchMm < least && piece.ThreadPerAreaMm * least > LeastThread;

    private static bool IsJudged(Piece piece, Subject subject, RuleInForce rule) =>
        piece.Blanket.SquareMillimeters >= rule.Parameter("areaAtLeastMm2")
        && !subject.Foam.Contains(piece)
        && !BlockThreads.IsMetallic(subject, piece);

    /// <summary>On closed cover no cloth shows: satin may be lighter there, and a fill shades what lies under it.</summary>
    private static double MostOn(Subject subject, RuleInForce rule, Piece piece, double most) =>
        !SeenAreas.LiesOnCover(subject, piece) ? most
        : piece.Class == StitchClass.Fill ? double.PositiveInfinity
        : rule.Parameter("onCoverAtMostMm");

    private static string Say(Report report)
    {
        var (most, least) = (report.WorstFirst[0].Measured ?? 0, report.WorstFirst[^1].Measured ?? 0);
        var count = Figure.Count(report.WorstFirst.Count, "area has", "areas have");
        return $"{count} rows too far apart or too dense: spacing {Figure.Plain(least, 2)} to {Figure.Plain(most, 2)} mm.";
    }
}
