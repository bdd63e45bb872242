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
        if (area.Holds(subject.Points.BoxOf(0, subject.Points.Count - 1)))
            return [];
        var worst = Enumerable.Range(0, subject.Points.Count)
            .Select(i => area.Outside(subject.Points.At(i)))
            .MaxBy(outside => outside.Distance);
        return worst.Distance == 0
            ? []
            : PointRuns.Of(subject, rule.Limits, i => Outside(area, subject.Points.At(i))).Select(run => run with { Text = Spoken(worst.Of) });
    }

    private static double? Outside(SewableArea area, TapePoint point) =>
        area.Outside(point).Distance is > 0 and var distance ? distance / Tenths.PerMillimeter : null;

    private static string Spoken(Edge edge) => edge switch
    {
        Edge.Zone => "zone of the cap style",
        Edge.Frame => "field of the frame",
        _ => "field of the machine",
    };

    private static string Say(Report report) =>
        $"Needle points lie up to {Figure.Mm(report.Measured)} outside the {report.Worst.Text}.";
}
