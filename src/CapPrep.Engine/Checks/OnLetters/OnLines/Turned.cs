namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>
/// Lower case stands on a straight line and ends at several heights. Where the tops are straighter than the feet, a
/// design may stand on its head. Only lines with enough letters that reach below the line speak, and none does where
/// another line of the design stands upright.
/// </summary>
internal static class Turned
{
    internal static readonly Check Check = new("place.turned", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var lines = subject.TextLines.Select(line => (Line: line, Edges: LetterEdges.Of(subject.Points, line))).ToArray();
        var ratio = rule.Limits.Mildest ?? 0;
        return lines.Any(line => IsStraighter(line.Edges.Bottoms, line.Edges.Tops, ratio))
            ? []
            : lines
                .Where(line => HasLowerCase(line.Edges, line.Line.LetterHeightMm, rule))
                .Select(line => new Occurrence(subject.PlaceOf(line.Line)) { Measured = line.Edges.Tops.Deviation / line.Edges.Bottoms.Deviation });
    }

    private static bool IsStraighter(Edge one, Edge other, double ratio) => one.Deviation < ratio * other.Deviation;

    /// <summary>Lower case on its head: enough letters reach well below the level on which most begin.</summary>
    private static bool HasLowerCase(LetterEdges edges, double heightMm, RuleInForce rule)
    {
        var beyond = edges.Bottoms.Below(rule.Parameter("reachShare") * heightMm);
        return beyond >= rule.Parameter("lettersAtLeast") && beyond >= rule.Parameter("lettersShareAtLeast") * edges.Bottoms.Count;
    }

    private static string Say(Report report) => "The tops of the letters are straighter than their feet: check which end is up.";
}
