using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>
/// Where the needle passes without penetrating: start, end and jumps that leave the field of the frame, or pass its
/// posts; over the strap it is a hold. One record moves at most 12.1 mm, less than a post is kept clear on both
/// sides, so the ends of the records are enough.
/// </summary>
internal static class TravelOutside
{
    internal static readonly Check Check =
        new("place.travel-outside", Needs.SeatedDesign, Find, Say) { AskAgain = true };

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var way = new Way(subject, rule.Parameter("postClearanceMm"));
        var run = new List<int>();
        foreach (var stop in Stops(subject.Tape))
        {
            if (run.Count > 0 && (way.Level(stop) is null || stop != run[^1] + 1))
            {
                yield return way.Run(run);
                run.Clear();
            }

            if (way.Level(stop) is not null)
                run.Add(stop);
        }

        if (run.Count > 0)
            yield return way.Run(run);
    }

    /// <summary>Records behind which the needle is up, -1 for the start point, and the last record.</summary>
    private static IEnumerable<int> Stops(Tape tape) => Enumerable
        .Range(-1, tape.RecordCount + 1)
        .Where(record => record == -1 || record == tape.RecordCount - 1 || tape.Kinds[record] != RecordKind.Stitch);

    private static string Say(Report report) => report.Limit.Level == Severity.Hold
        ? $"With the needle up the tape passes over the strap, {Figure.Mm(report.Measured)} outside the field of the frame."
        : $"Start, end or a move with the needle up lies {Figure.Mm(report.Measured)} outside the field of the frame or at its posts.";

    private sealed class Way(Subject subject, double postClearanceMm)
    {
        private readonly CapFrame _frame = subject.Setup.Frame;
        private readonly Box _field = SewableArea.TravelFieldOf(subject.Setup.Frame);

        internal Severity? Level(int stop)
        {
            var point = subject.InFrame(PositionAt(stop));
            if (_frame.Holds == FrameHold.StrapAndPosts && point.Y < _field.Bottom)
                return Severity.Hold;
            return SewableArea.DistanceOutside(_field, point) > 0 || PassesPost(point) ? Severity.Warn : null;
        }

        internal Occurrence Run(List<int> stops)
        {
            var points = stops.Select(PositionAt).ToArray();
            return new Occurrence(PlaceOf(points, stops))
            {
                Measured = points.Max(point => SewableArea.DistanceOutside(_field, subject.InFrame(point))) / (double)Tenths.PerMillimeter,
                Level = stops.Max(Level),
            };
        }

        private bool PassesPost(TapePoint point) =>
            Posts.Concern(subject) && Posts.DistanceMm(_frame, point) < postClearanceMm;

        private TapePoint PositionAt(int stop) =>
            subject.Seated.OnCap(stop < 0 ? TapePoint.Origin : subject.Tape.PositionBehind(stop));

        private Place PlaceOf(TapePoint[] points, List<int> stops) => new(PlaceKind.CapFront)
        {
            BoxMm = points.Select(Box.Of).Aggregate((all, next) => all.Union(next)).ToMillimeters(),
            Blocks = [subject.Stitches.Block[PenetrationBefore(stops[0])]],
            Stitches = new StitchRange(PenetrationBefore(stops[0]) + 1, PenetrationBehind(stops[^1]) + 1),
        };

        /// <summary>Last penetration up to a record; the first of the tape where none is before it.</summary>
        private int PenetrationBefore(int record) => Math.Max(0, Count(record) - 1);

        private int PenetrationBehind(int record) => Math.Min(subject.Stitches.Count - 1, Count(record));

        /// <summary>Penetrations up to and with a record.</summary>
        private int Count(int record)
        {
            var found = subject.Stitches.Record.BinarySearch(record);
            return found >= 0 ? found + 1 : ~found;
        }
    }
}
