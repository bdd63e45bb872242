using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using NetTopologySuite.Geometries;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>
/// Distance to side seams and eyelets. Both are given from the middle of the front, so only zones that lie on it are
/// judged; another keeps its distance by its own outline.
/// </summary>
internal static class KeepOut
{
    private static readonly GeometryFactory Factory = new();

    internal static readonly Check SideSeam = new(
        "place.side-seam",
        Needs.SeatedDesign,
        FindSideSeams,
        report => $"Needle points come within {Figure.Mm(report.Measured)} of a side seam; {Figure.Mm(report.LimitValue)} is wanted.");

    /// <summary>Measured from the rim: below 0 the needle falls into the eyelet. Silent for appliqué, which may cover it.</summary>
    internal static readonly Check Eyelet = new("place.eyelet", Needs.SeatedDesign, FindEyelets, SayEyelet);

    private static IEnumerable<Occurrence> FindSideSeams(Subject subject, RuleInForce rule)
    {
        var sides = subject.Setup.Style!.Seams.Where(seam => seam.Kind == "side").SelectMany(Segments).ToArray();
        return !subject.LiesOnFront || sides.Length == 0 || IsClear(rule, sides.Min(side => FromDesign(subject, side)))
            ? []
            : PointRuns.Of(subject, rule.Limits, i => sides.Min(side => side.Distance(At(subject, i))));
    }

    private static IEnumerable<Occurrence> FindEyelets(Subject subject, RuleInForce rule)
    {
        var eyelets = subject.Setup.Style!.Eyelets;
        return !subject.LiesOnFront || subject.Ticket.Technique == Technique.Applique || eyelets.Count == 0
            || IsClear(rule, eyelets.Min(eyelet => FromDesign(subject, new(eyelet.XMm, eyelet.YMm, eyelet.XMm, eyelet.YMm)) - eyelet.RadiusMm))
            ? []
            : PointRuns.Of(subject, rule.Limits, i => eyelets.Min(eyelet => FromRim(eyelet, At(subject, i))));
    }

    /// <summary>No needle point can come nearer than the box of them all.</summary>
    private static bool IsClear(RuleInForce rule, double nearest) => rule.Limits.PassedBy(nearest) is null;

    private static double FromDesign(Subject subject, LineSegment line)
    {
        var box = subject.Points.BoxOf(0, subject.Points.Count - 1);
        var (low, high) = (At(subject, new TapePoint(box.Left, box.Bottom)), At(subject, new TapePoint(box.Right, box.Top)));
        return Factory.ToGeometry(new Envelope(low, high)).Distance(line.ToGeometry(Factory));
    }

    private static string SayEyelet(Report report) => report.Measured < 0
        ? "Needle points fall into an eyelet."
        : $"Needle points come within {Figure.Mm(report.Measured)} of an eyelet's rim; {Figure.Mm(report.LimitValue)} is wanted.";

    private static double FromRim(Eyelet eyelet, Coordinate point) =>
        point.Distance(new Coordinate(eyelet.XMm, eyelet.YMm)) - eyelet.RadiusMm;

    private static IEnumerable<LineSegment> Segments(CapSeam seam) => seam.LineMm
        .Zip(seam.LineMm.Skip(1))
        .Select(side => new LineSegment(side.First.X, side.First.Y, side.Second.X, side.Second.Y));

    private static Coordinate At(Subject subject, int point) => At(subject, subject.Points.At(point));

    private static Coordinate At(Subject subject, TapePoint point)
    {
        var (x, y) = subject.InFrame(point);
        return new Coordinate(x / (double)Tenths.PerMillimeter, y / (double)Tenths.PerMillimeter);
    }
}
