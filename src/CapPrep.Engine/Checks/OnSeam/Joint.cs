using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>
/// Two areas that meet at the seam with too little overlap: they draw apart and the seam shows between them. Silent where
/// both lie on cover, for letters, and where the gap is so wide that it is drawn so.
/// </summary>
internal static class Joint
{
    internal static readonly Check Check = new(
        "seam.joint",
        Needs.SeatedDesign,
        Find,
        report => $"Two areas meet at the center seam {Words(report.Measured)}; {Figure.Mm(report.LimitValue)} of overlap is wanted.");

    private const double LiesOnCover = 0.8;

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (SeamView.Of(subject) is not { } seam)
            return [];
        var letters = subject.TextLines.SelectMany(line => line.Elements).ToHashSet();
        Half[] halves = [.. subject.Reading.Pieces
            .Where(piece => piece is { IsClosed: true, Sure: true } && !letters.Contains(piece.Element) && piece.Blanket.SquareMillimeters >= rule.Parameter("areaAtLeastMm2"))
            .Where(piece => subject.Ground[piece].OnCover < LiesOnCover)
            .Select(piece => Half.Of(piece, seam, rule.Parameter("nearMm")))];
        return from left in halves
               where left.LiesLeft
               from right in halves
               where right.LiesRight && right.Piece != left.Piece
               let overlap = left.OverlapMm(right)
               where overlap is { } found && found > -rule.Parameter("drawnSoFromMm") && rule.Limits.PassedBy(found) is not null
               select new Occurrence(subject.PlaceOf(Math.Min(left.Piece.First, right.Piece.First), Math.Max(left.Piece.Last, right.Piece.Last)) with
               {
                   BoxMm = left.Around(right),
                   Elements = [.. new[] { left.Piece.Element + 1, right.Piece.Element + 1 }.Distinct().Order()],
               })
               { Measured = overlap };
    }

    private static string Words(double overlap) => overlap < 0
        ? $"{Figure.Mm(-overlap)} apart"
        : $"with {Figure.Mm(overlap)} of overlap";

    /// <summary>Where the thread of an area ends near the seam, level by level, tape units from the seam.</summary>
    private sealed record Half(Piece Piece, IReadOnlyDictionary<int, (int Least, int Most)> Ends, double NearMm)
    {
        // Most of an area must lie on its side.
        private const double OnItsSide = 0.8;

        // So high is a level, tape units: rows at a usual spacing leave none out.
        private const int Level = 5;

        // 5 mm of height.
        private const int FewestLevels = 50 / Level;

        public bool LiesLeft { get; private init; }

        public bool LiesRight { get; private init; }

        public static Half Of(Piece piece, SeamView seam, double nearMm)
        {
            var cells = piece.Blanket.CoveredCells().Select(seam.At).ToArray();
            var left = (double)cells.Count(at => at.X < 0) / cells.Length;
            var ends = seam.Thread(piece)
                .GroupBy(at => (int)Math.Floor((double)at.Y / Level))
                .ToDictionary(level => level.Key, level => (level.Min(at => at.X), level.Max(at => at.X)));
            return new(piece, ends, nearMm) { LiesLeft = left >= OnItsSide, LiesRight = left <= 1 - OnItsSide };
        }

        /// <summary>Median over the levels on which both end near the seam; null when those are too few.</summary>
        public double? OverlapMm(Half right)
        {
            int[] overlaps = [.. Meeting(right).Select(level => Ends[level].Most - right.Ends[level].Least)];
            return overlaps.Length < FewestLevels ? null : Median.Of(overlaps) / 10.0;
        }

        public BoxMm Around(Half right)
        {
            var levels = Meeting(right).ToArray();
            return new(-NearMm, levels[0] * Level / 10.0, NearMm, (levels[^1] + 1) * Level / 10.0);
        }

        private IEnumerable<int> Meeting(Half right) => Ends
            .Where(level => Math.Abs(level.Value.Most) <= 10 * NearMm && right.Ends.TryGetValue(level.Key, out var other) && Math.Abs(other.Least) <= 10 * NearMm)
            .Select(level => level.Key)
            .Order();
    }
}
