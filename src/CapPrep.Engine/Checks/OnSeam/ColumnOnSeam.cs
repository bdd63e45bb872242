using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>
/// Narrow columns and lines that run along the seam: the seam swallows them. Silent on a fill that reaches past the seam
/// on both sides and over foam; underlay across the seam makes it a note.
/// </summary>
internal static class ColumnOnSeam
{
    internal static readonly Check Check = new("seam.column-on-seam", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (SeamView.Of(subject) is not { } seam)
            return [];
        return subject.Reading.Pieces
            .Where(piece => piece.Sure && !subject.Foam.Contains(piece))
            .SelectMany(piece => piece.Class switch
            {
                StitchClass.Satin => Columns(piece, seam, rule),
                StitchClass.Running => Lines(piece, seam, rule),
                _ => [],
            })
            .Where(run => run.HeightMm >= rule.Parameter("lengthAtLeastMm") && !LiesOnFill(run, subject, seam, rule))
            .Select(run => OccurrenceOf(run, subject, seam, rule));
    }

    /// <summary>Rows across the seam's direction whose middle or an edge lies near the seam.</summary>
    private static IEnumerable<Run> Columns(Piece piece, SeamView seam, RuleInForce rule)
    {
        var (widest, near) = (rule.Limits.Mildest ?? 0, 10 * rule.Parameter("nearMm"));
        var rows = piece.RowsInOrder.Select(row => (row.First, row.Last, From: seam.At(row.First), To: seam.At(row.Last)));
        return Runs(piece, rows.Select(row =>
        {
            var way = row.To - row.From;
            var isAlong = Math.Abs(way.Y) <= Tangent20 * Math.Abs(way.X);
            var nearest = new[] { row.From.X, row.To.X, (row.From.X + row.To.X) / 2 }.Min(Math.Abs);
            var width = Fine.Millimeters(Fine.Length(way));
            return (row.First, row.Last, Passes: isAlong && nearest <= near && width < widest, Width: width, Y: (row.From.Y + row.To.Y) / 2);
        }));
    }

    private static IEnumerable<Run> Lines(Piece piece, SeamView seam, RuleInForce rule)
    {
        var near = 10 * rule.Parameter("lineNearMm");
        return Runs(piece, Enumerable.Range(piece.First + 1, Math.Max(0, piece.Last - piece.First)).Select(point =>
        {
            var (from, to) = (seam.At(point - 1), seam.At(point));
            var way = to - from;
            var isAlong = Math.Abs(way.X) <= Tangent10 * Math.Abs(way.Y);
            return (point - 1, point, Passes: isAlong && Math.Max(Math.Abs(from.X), Math.Abs(to.X)) <= near, Width: 0.0, to.Y);
        }));
    }

    private static IEnumerable<Run> Runs(Piece piece, IEnumerable<(int First, int Last, bool Passes, double Width, int Y)> steps)
    {
        var open = new List<(int First, int Last, double Width, int Y)>();
        foreach (var (first, last, passes, width, y) in steps)
        {
            if (passes)
            {
                open.Add((first, last, width, y));
                continue;
            }

            if (open.Count > 1)
                yield return Run.Of(piece, open);
            open = [];
        }

        if (open.Count > 1)
            yield return Run.Of(piece, open);
    }

    /// <summary>Cover below reaches past the seam on both sides along the whole run.</summary>
    private static bool LiesOnFill(Run run, Subject subject, SeamView seam, RuleInForce rule)
    {
        var reach = rule.Parameter("fillReachMm");
        var below = subject.Ground[run.Piece].Below.Where(piece => piece.Class != StitchClass.Satin || piece.WidthMm > 2 * reach);
        var cells = below.SelectMany(piece => piece.Blanket.CoveredCells()).Select(seam.At).Where(at => at.Y >= run.Bottom && at.Y <= run.Top).ToArray();
        return Rows(cells.Where(at => at.X <= -10 * reach && at.X > -10 * (reach + 1))) && Rows(cells.Where(at => at.X >= 10 * reach && at.X < 10 * (reach + 1)));

        bool Rows(IEnumerable<TapePoint> side) => side.Select(at => at.Y).Distinct().Count() * 2.5 >= 0.8 * (run.Top - run.Bottom);
    }

    private static Occurrence OccurrenceOf(Run run, Subject subject, SeamView seam, RuleInForce rule)
    {
        var across = 10 * rule.Parameter("underlayAcrossMm");
        var under = seam.PointsUnder(run.Piece).Where(at => at.Y >= run.Bottom && at.Y <= run.Top).ToArray();
        var isCarried = under.Any(at => at.X <= -across) && under.Any(at => at.X >= across);
        var level = isCarried || run.WidthMm >= rule.Limits.At(Severity.Warn) ? Severity.Note : Severity.Warn;
        return new(subject.PlaceOf(run.First, run.Last))
        {
            Measured = run.WidthMm,
            Level = level,
            Text = run.WidthMm == 0 ? "A line" : $"A column of {Figure.Mm(run.WidthMm)}",
        };
    }

    private static string Say(Report report)
    {
        var others = report.WorstFirst.Count - 1;
        var says = $"{report.Worst.Text} runs along the center seam, which swallows it.";
        return others == 0 ? says : $"{says} {Figure.Count(others, "more does", "more do")} so.";
    }

    // Tangents of 20 and 10 degrees.
    private const double Tangent20 = 0.364;
    private const double Tangent10 = 0.176;

    private sealed record Run(Piece Piece, int First, int Last, double WidthMm, int Bottom, int Top)
    {
        public double HeightMm => (Top - Bottom) / 10.0;

        public static Run Of(Piece piece, List<(int First, int Last, double Width, int Y)> steps)
        {
            double[] widths = [.. steps.Select(step => step.Width).Order()];
            return new(piece, steps[0].First, steps[^1].Last, widths[widths.Length / 2], steps.Min(step => step.Y), steps.Max(step => step.Y));
        }
    }
}
