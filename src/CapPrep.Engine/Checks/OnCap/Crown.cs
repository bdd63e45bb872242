using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>
/// Top edge of the design against the style's top line, which falls away to the sides: above it the arm of the
/// machine meets the crown (fact row F24). Silent where a zone has no top line.
/// </summary>
internal static class Crown
{
    internal static readonly Check Check = new("place.crown", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var limitsByX = new Dictionary<int, Limits>();
        return PointRuns.Of(
            subject,
            i => LimitsAt(limitsByX, Math.Abs(subject.Points.X[i]), subject, rule),
            i => subject.Points.Y[i] / (double)Tenths.PerMillimeter);
    }

    private static Limits LimitsAt(Dictionary<int, Limits> known, int x, Subject subject, RuleInForce rule)
    {
        if (known.TryGetValue(x, out var limits))
            return limits;
        return known[x] = Limits.Of(rule.Rule, subject, x / (double)Tenths.PerMillimeter);
    }

    private static string Say(Report report) =>
        $"The top of the design is {Figure.Mm(report.Measured)} above the brim seam; the crown takes {Figure.Mm(report.LimitValue)} at that place.";
}
