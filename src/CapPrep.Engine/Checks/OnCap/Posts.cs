using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>
/// Distance to the posts of the frame and the clips on them: upright bars from the brim seam to where the clips end.
/// They are given from the middle of the front, so zones off the front are not judged.
/// </summary>
internal static class Posts
{
    internal static readonly Check Check = new(
        "place.posts",
        Needs.SeatedDesign,
        Find,
        report => $"Needle points come within {Figure.Mm(report.Measured)} of a post or clip of the frame; {Figure.Mm(report.LimitValue)} is wanted.");

    internal static bool Concern(Subject subject) =>
        subject.Setup.Frame.PostsXMm.Count > 0 && subject.LiesOnFront;

    /// <summary>Distance of a point in the frame from the nearest post, mm.</summary>
    internal static double DistanceMm(CapFrame frame, TapePoint point)
    {
        var (x, y) = (point.X / (double)Tenths.PerMillimeter, point.Y / (double)Tenths.PerMillimeter);
        var top = frame.SidesHeldBelowMm ?? SewableArea.FieldOf(frame).Top / (double)Tenths.PerMillimeter;
        var above = Math.Max(0, Math.Max(y - top, -y));
        return frame.PostsXMm.Min(post => Math.Sqrt(((x - post) * (x - post)) + (above * above)));
    }

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var frame = subject.Setup.Frame;
        return Concern(subject)
            ? PointRuns.Of(subject, rule.Limits, i => (double?)DistanceMm(frame, subject.InFrame(subject.Points.At(i))))
            : [];
    }
}
