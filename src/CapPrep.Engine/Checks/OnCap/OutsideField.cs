using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>Needle points outside the zone of the style, the field of the frame or the field of the machine.</summary>
internal static class OutsideField
{
    internal static readonly Check Check = new("place.outside-field", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var area = new SewableArea(subject.Seated.Zone, subject.Setup.Frame, subject.Setup.Machine);
        return PointRuns.Of(subject, rule.Limits, i => Outside(area, subject.Points.At(i)));
    }

    private static double? Outside(SewableArea area, TapePoint point)
    {
        var distance = area.DistanceOutside(point);
        return distance > 0 ? distance / Tenths.PerMillimeter : null;
    }

    private static string Say(Report report) =>
        $"Needle points lie up to {Figure.Mm(report.Measured)} outside what style, frame and machine let the needle reach.";
}
