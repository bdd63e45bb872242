using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Verdicts;

/// <summary>When a tape that may sew has so many faults of its making that the lead should think of returning it (house).</summary>
internal static class AdviceRule
{
    private const int ManyWarns = 5;

    private static readonly string[] Groups = ["border.", "seam.", "lettering."];

    internal static Advice? Of(Judgment judgment, IReadOnlyList<Finding> findings) =>
        judgment.Sews && findings.Count(IsDigitizersWarn) >= ManyWarns ? Advice.ConsiderReturn : null;

    private static bool IsDigitizersWarn(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Warn, Remedy.Who: Actor.Digitizer }
        && Groups.Any(group => finding.Rule.StartsWith(group, StringComparison.Ordinal));
}
