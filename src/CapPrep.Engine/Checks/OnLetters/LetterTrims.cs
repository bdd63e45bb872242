using CapPrep.Engine.Lettering;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>
/// Trims between two small letters that stand side by side and are sewn one after the other: time, and a lump of ties
/// at each. The thread may as well walk over.
/// </summary>
internal static class LetterTrims
{
    internal static readonly Check Check = new("stitch.small-letter-trim", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) => subject.TextLines
        .Where(line => line.LetterHeightMm < rule.Parameter("lettersBelowMm"))
        .SelectMany(line => Trims(subject, line))
        .Where(trim => rule.Limits.PassedBy(trim.GapMm) is not null)
        .Select(trim => new Occurrence(subject.PlaceOf(trim.Left, trim.Right)) { Measured = trim.GapMm });

    private static IEnumerable<Trim> Trims(Subject subject, TextLine line)
    {
        var sewn = line.Glyphs.OrderBy(glyph => glyph.Strokes[0].First).ToArray();
        var elements = line.Elements.ToHashSet();
        foreach (var (before, after) in sewn.Zip(sewn.Skip(1)))
        {
            var (left, right) = before.Index < after.Index ? (before, after) : (after, before);
            var way = (First: before.Strokes[^1].Last, Last: after.Strokes[0].First);
            if (right.Index == left.Index + 1 && left.GapMm is { } gap && IsTrimmed(subject, way) && SewsNothingElse(subject, way, elements))
                yield return new(left, right, gap);
        }
    }

    private static bool IsTrimmed(Subject subject, (int First, int Last) way)
    {
        var trimmed = false;
        for (var point = way.First + 1; point <= way.Last; point++)
        {
            if (subject.Stitches.Relations[point] == Relation.Stop)
                return false;
            trimmed |= subject.Stitches.Relations[point] == Relation.Cut;
        }

        return trimmed;
    }

    private static bool SewsNothingElse(Subject subject, (int First, int Last) way, HashSet<int> elements) =>
        subject.Reading.Pieces.All(piece => piece.Last < way.First || piece.First > way.Last || elements.Contains(piece.Element));

    private static string Say(Report report) =>
        $"{Figure.Count(report.WorstFirst.Count, "trim lies", "trims lie")} between small letters that stand less than {Figure.Mm(report.LimitValue)} apart.";

    private sealed record Trim(Glyph Left, Glyph Right, double GapMm);
}
