using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>
/// Small letters whose strokes lie on the center seam and vanish in it. Silent where the seam runs through the gap
/// between two letters, where the line lies on a fill, and off the front.
/// </summary>
internal static class SeamLetters
{
    internal static readonly Check Check = new("seam.small-text", Needs.SeatedDesign, Find, Say);

    /// <summary>Less high than this share of the letters of its line, a glyph is a sign and no letter.</summary>
    private const double LetterShare = 0.6;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) => subject.LiesOnFront
        ? LetterLine.Of(subject).Where(line => !line.LiesOnFill).Select(line => Judge(subject, line, rule)).OfType<Occurrence>()
        : [];

    private static Occurrence? Judge(Subject subject, LetterLine line, RuleInForce rule)
    {
        var near = rule.Parameter("strokeWithinMm") * Tenths.PerMillimeter;
        var seam = new Seam(subject, line.Line);
        if (seam.RunsThroughGap(rule.Parameter("gapBesideSeamMm") * Tenths.PerMillimeter))
            return null;
        var letter = seam.Near
            .Where(glyph => glyph.Distance < near && glyph.Glyph.HeightMm >= LetterShare * line.Line.LetterHeightMm)
            .Select(glyph => (glyph.Glyph, Passed: rule.Limits.PassedBy(glyph.Glyph.HeightMm, line.Worst)))
            .FirstOrDefault(glyph => glyph.Passed is not null);
        return letter.Passed is { } passed
            ? new Occurrence(subject.PlaceOf(letter.Glyph)) { Measured = letter.Glyph.HeightMm, Level = passed.Level }
            : null;
    }

    private static string Say(Report report)
    {
        var says = $"A letter of {Figure.Mm(report.Measured)} has its strokes on the center seam, which swallows it.";
        return report.WorstFirst.Count == 1 ? says : $"{says} So has {Figure.Count(report.WorstFirst.Count - 1, "more line", "more lines")}.";
    }

    /// <summary>The letters of a line about the seam; lengths in tape units.</summary>
    private sealed class Seam
    {
        private readonly (Glyph Glyph, int Left, int Right)[] _letters;

        internal Seam(Subject subject, TextLine line) =>
            _letters = [.. line.Glyphs.Select(glyph => Sides(subject, glyph))];

        /// <summary>Letters by the distance of their strokes from the seam, nearest first.</summary>
        internal IEnumerable<(Glyph Glyph, int Distance)> Near => _letters
            .Select(letter => (letter.Glyph, Math.Min(letter.Left, letter.Right)))
            .OrderBy(letter => letter.Item2);

        /// <summary>The nearest letters on its two sides are two letters, and both keep their distance.</summary>
        internal bool RunsThroughGap(double beside)
        {
            var left = _letters.MinBy(letter => letter.Left);
            var right = _letters.MinBy(letter => letter.Right);
            return left.Glyph.Index != right.Glyph.Index
                && left.Left != int.MaxValue && right.Right != int.MaxValue
                && left.Left >= beside && right.Right >= beside;
        }

        /// <summary>Least distance of its stitches left and right of the seam, 0 where they cross it.</summary>
        private static (Glyph Glyph, int Left, int Right) Sides(Subject subject, Glyph glyph)
        {
            var (left, right) = (int.MaxValue, int.MaxValue);
            foreach (var (first, last) in glyph.Strokes)
            {
                for (var point = first; point <= last; point++)
                {
                    var (from, to) = (X(Math.Max(first, point - 1)), X(point));
                    if (Math.Min(from, to) <= 0)
                        left = Math.Min(left, Math.Max(0, -Math.Max(from, to)));
                    if (Math.Max(from, to) >= 0)
                        right = Math.Min(right, Math.Max(0, Math.Min(from, to)));
                }
            }

            return (glyph, left, right);

            int X(int point) => subject.InFrame(subject.Points.At(point)).X;
        }
    }
}
