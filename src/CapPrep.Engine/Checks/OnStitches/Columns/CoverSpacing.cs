using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>
/// Top satin and fill so open that the cloth shows, or so dense that it cuts it (house; fact rows L35 to L39). Silent
/// over foam, for metallic thread, for blends of colors, and for rows that shade: on closed cover, or very far apart. Open is how far rows
/// gape; dense is how much thread lies there, so rows that turn in short steps are no denser than those that meet.
/// </summary>
internal static class CoverSpacing
{
    internal static readonly Check Open = new("stitch.cover", Needs.SeatedDesign, FindOpen, report => Say(report, "too far apart"));

    internal static readonly Check Dense = new("stitch.crowded", Needs.SeatedDesign, FindDense, report => Say(report, "too dense"));

    // Rows of one spacing lay about twice its inverse of thread on an area; much less is no dense area.
    private const double LeastThread = 1.4;

    private static IEnumerable<Occurrence> FindOpen(Subject subject, RuleInForce rule)
    {
        if (rule.Limits.Mildest is not { } most)
            yield break;
        var blends = new Blends(subject, most + rule.Parameter("readToMm"));
        foreach (var piece in Judged(subject, rule))
        {
            if (RowOpenings.OfMm(piece, subject.Stitches) is { } opening
                && opening <= rule.Parameter("shadingFromMm")
                && Passed(piece, opening, subject, rule) is { } passed
                && !blends.Contains(piece))
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = opening, Level = passed.Level, LimitHere = passed.Value };
        }
    }

    /// <summary>On closed cover no cloth shows: satin may be lighter there, and a fill shades what lies under it.</summary>
    private static PassedLimit? Passed(Piece piece, double opening, Subject subject, RuleInForce rule)
    {
        if (!SeenAreas.LiesOnCover(subject, piece))
            return rule.Limits.PassedBy(opening - rule.Parameter("readToMm"));
        var more = rule.Parameter("onCoverMoreMm");
        return piece.Class != StitchClass.Fill && rule.Limits.PassedBy(opening - more) is { } passed ? passed with { Value = passed.Value + more } : null;
    }

    private static IEnumerable<Occurrence> FindDense(Subject subject, RuleInForce rule)
    {
        if (rule.Limits.Mildest is not { } least)
            yield break;
        var read = rule.Parameter("readToMm");
        foreach (var piece in Judged(subject, rule).Where(piece => piece.ThreadPerAreaMm * (least - read) > LeastThread))
        {
            if (RowOpenings.OfMm(piece, subject.Stitches) is not null && rule.Limits.PassedBy(piece.PitchMm + read) is { } passed)
                yield return new(subject.PlaceOf(piece.First, piece.Last)) { Measured = piece.PitchMm, Level = passed.Level };
        }
    }

    private static IEnumerable<Piece> Judged(Subject subject, RuleInForce rule) => SeenAreas.WithDoubtful(subject).Where(piece =>
        piece.Blanket.SquareMillimeters >= rule.Parameter("areaAtLeastMm2")
        && !subject.Foam.Contains(piece)
        && !BlockThreads.IsMetallic(subject, piece));

    private static string Say(Report report, string word)
    {
        string[] ends = [.. new[] { report.WorstFirst[0], report.WorstFirst[^1] }.Select(one => one.Measured ?? 0).Order().Select(mm => Figure.Plain(mm, 2)).Distinct()];
        return $"{Figure.Count(report.WorstFirst.Count, "area has", "areas have")} rows {word}: spacing {string.Join(" to ", ends)} mm.";
    }
}
