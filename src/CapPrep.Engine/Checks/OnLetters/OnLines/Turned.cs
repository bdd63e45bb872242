using CapPrep.Engine.Lettering;

namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>
/// Lower case stands on a straight line and ends at several heights. Where the tops are straighter than the feet, a
/// design may stand on its head. Only lines with enough letters that reach beyond the others speak, and none does
/// where another line of the design stands upright.
/// </summary>
internal static class Turned
{
    internal static readonly Check Check = new("place.turned", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var lines = subject.TextLines.Select(line => (Line: line, Edges: LetterEdges.Of(subject.Points, line))).ToArray();
        if (lines.Any(line => StandsOnItsFeet(line.Edges, Reach(line.Line.LetterHeightMm, rule), rule)))
            return [];
        Occurrence[] onHead =
        [
            .. lines
                .Where(line => IsLowerCase(line.Edges.Bottoms.Below(Reach(line.Line.LetterHeightMm, rule)), line.Edges.Bottoms.Count, rule))
                .Select(line => new Occurrence(subject.PlaceOf(line.Line)) { Measured = line.Edges.Tops.Deviation / line.Edges.Bottoms.Deviation }),
        ];
        return onHead.Any(line => rule.Limits.PassedBy(line.Measured) is not null) || subject.TextLines.Any(IsClear) ? onHead : ReadUpsideDown(subject, rule);
    }

    /// <summary>Upside down, letters may be found on a line where upright only some of them lie on a false arc.</summary>
    private static IEnumerable<Occurrence> ReadUpsideDown(Subject subject, RuleInForce rule)
    {
        if (subject.TextLines.Count == 0)
            return [];
        var points = subject.Points.UpsideDown();
        var most = subject.TextLines.Max(line => line.Glyphs.Count);
        return LineFinder.Find(subject.Stitches, subject.Reading, points)
            .Where(line => IsClear(line) && line.Glyphs.Count > most)
            .Select(line => (Line: line, Edges: LetterEdges.Of(points, line)))
            .Where(line => StandsOnItsFeet(line.Edges, Reach(line.Line.LetterHeightMm, rule), rule))
            .Select(line => new Occurrence(subject.PlaceOf(line.Line with { Box = line.Line.Box.UpsideDown() }))
            {
                Measured = line.Edges.Bottoms.Deviation / line.Edges.Tops.Deviation,
            });
    }

    private static bool IsClear(TextLine line) => line.Sure && !line.Base.IsArc;

    private static bool StandsOnItsFeet(LetterEdges edges, double reachMm, RuleInForce rule) =>
        IsLowerCase(edges.Tops.Above(reachMm), edges.Tops.Count, rule)
        && rule.Limits.PassedBy(edges.Bottoms.Deviation / edges.Tops.Deviation) is not null;

    private static double Reach(double letterHeightMm, RuleInForce rule) => rule.Parameter("reachShare") * letterHeightMm;

    /// <summary>Enough letters reach beyond the others, as ascenders do.</summary>
    private static bool IsLowerCase(int reaching, int letters, RuleInForce rule) =>
        reaching >= rule.Parameter("lettersAtLeast") && reaching >= rule.Parameter("lettersShareAtLeast") * letters;

    private static string Say(Report report) => "The tops of the letters are straighter than their feet: check which end is up.";
}
