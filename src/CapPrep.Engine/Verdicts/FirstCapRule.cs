using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Verdicts;

/// <summary>
/// Whether one cap is sewn and measured before all heads are loaded (house): one cap and eight minutes settle most
/// doubts.
/// </summary>
internal static class FirstCapRule
{
    /// <summary>Rule groups whose warns only a sewn cap can settle.</summary>
    private static readonly string[] DoubtfulGroups = ["border.", "seam.", "lettering.", "foam."];

    internal static FirstCap Of(bool sewnBefore, Setup setup, IReadOnlyList<Finding> findings)
    {
        string[] required = [.. Required(sewnBefore, findings)];
        if (required.Length > 0)
            return new FirstCap(FirstCapIs.Required, required);
        return setup.Style?.Measured is null
            ? new FirstCap(FirstCapIs.Advised, ["nobody in this shop has measured this cap style yet"])
            : new FirstCap(FirstCapIs.No, []);
    }

    private static IEnumerable<string> Required(bool sewnBefore, IReadOnlyList<Finding> findings)
    {
        if (!sewnBefore)
            yield return "first time these stitches run on this style";
        foreach (var finding in findings.Where(IsDoubt))
            yield return finding.Message;
    }

    private static bool IsDoubt(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Warn }
        && DoubtfulGroups.Any(group => finding.Rule.StartsWith(group, StringComparison.Ordinal));
}
