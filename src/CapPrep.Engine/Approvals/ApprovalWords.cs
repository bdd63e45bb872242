using CapPrep.Engine.Verdicts;

namespace CapPrep.Engine.Approvals;

/// <summary>Says to the lead that approved work is sewn, and which.</summary>
internal static class ApprovalWords
{
    private const string Between = ". ";

    /// <summary>The lead's first sentence says what is sewn; what has no room behind it is left out.</summary>
    internal static Summary AddTo(Summary summary, Judgment judgment, Approval? approval)
    {
        if (approval is null || !judgment.Sews)
            return summary;
        var sewn = judgment.Verdict == Verdict.SewResequenced ? "in the order" : "as received,";
        var rest = summary.Lead.Split(Between).Skip(1).Select(sentence => sentence.EndsWith('.') ? sentence : sentence + ".");
        return summary with { Lead = Sentences.Fit([$"Sew {sewn} {approval.Note}.", .. rest]) };
    }
}
