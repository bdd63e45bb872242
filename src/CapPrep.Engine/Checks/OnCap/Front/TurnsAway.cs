using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnCap.Front;

/// <summary>
/// Stitches so far from the middle that they turn away from who stands in front of the cap (fact row P22). The desk
/// learns how wide the design looks from there.
/// </summary>
internal static class TurnsAway
{
    internal static readonly Check Check = new("place.turns-away", Needs.SeatedDesign, Find, report => report.Worst.Text);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var reach = Tenths.FromMillimeters(rule.Parameter("awayFromMm")).Value;
        var share = Share(subject, reach);
        return rule.Limits.PassedBy(share) is null ? [] : [new(subject.WholeDesign()) { Measured = share, Text = Said(subject, rule, share) }];
    }

    private static double Share(Subject subject, int reach)
    {
        var away = 0;
        foreach (var x in subject.Points.X)
            away += Math.Abs(x) > reach ? 1 : 0;
        return away / (double)subject.Points.Count;
    }

    private static string Said(Subject subject, RuleInForce rule, double share)
    {
        var width = subject.Seated.Box.ToMillimeters().Width;
        return $"{Figure.Plain(100 * share, 0)} % of the stitches lie over {Figure.Mm(rule.Parameter("awayFromMm"))} from the middle and turn away. "
            + $"From the front {Figure.Plain(width, 0)} mm look like {Figure.Plain(LooksMm(width, subject.Setup.Style!), 0)} mm.";
    }

    /// <summary>The chord of an arc on a round cap (fact row W30).</summary>
    internal static double LooksMm(double width, CapStyle style)
    {
        var degrees = 180 * width / style.CircumferenceMm;
        return degrees >= 90 ? style.CircumferenceMm / Math.PI : style.CircumferenceMm / Math.PI * Trig.Sine(degrees);
    }
}
