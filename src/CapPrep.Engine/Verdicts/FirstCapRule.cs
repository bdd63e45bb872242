using CapPrep.Engine.Approvals;
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

    internal static FirstCap Of(PrepareRequest request, Approval? approval, Judgment judgment, IReadOnlyList<Finding> findings)
    {
        if (request.SewnBefore && approval == request.Approval)
            return new FirstCap(FirstCapIs.No, []);
        string[] required = [.. Required(approval is not null, judgment, findings)];
        if (required.Length > 0)
            return new FirstCap(FirstCapIs.Required, required);
        return new FirstCap(FirstCapIs.Advised, ["not approved on this machine within 12 months"]);
    }

    private static IEnumerable<string> Required(bool isApproved, Judgment judgment, IReadOnlyList<Finding> findings)
    {
        if (!isApproved && judgment.Verdict == Verdict.SewResequenced)
            yield return "re-sequenced tape";
        if (!isApproved)
            yield return "first time these stitches run on this style";
        foreach (var finding in findings.Where(IsDoubt))
            yield return finding.Message;
    }

    private static bool IsDoubt(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Warn }
        && DoubtfulGroups.Any(group => finding.Rule.StartsWith(group, StringComparison.Ordinal));
}
