using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>Lowest needle points above the brim seam, along the cloth, which the strap pulls straight.</summary>
internal static class AboveBrim
{
    internal static readonly Check Check = new("place.brim-clearance", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) =>
        PointRuns.Of(subject, rule.Limits, i => (double?)subject.Points.Y[i] / Tenths.PerMillimeter);

    private static string Say(Report report) =>
        $"The lowest needle point is {Figure.Mm(report.Measured)} above the brim seam; at least {Figure.Mm(report.LimitValue)} is wanted.";
}
