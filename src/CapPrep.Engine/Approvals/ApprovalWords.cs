using CapPrep.Engine.Verdicts;

namespace CapPrep.Engine.Approvals;

/// <summary>Says to the lead that approved work is sewn.</summary>
internal static class ApprovalWords
{
    /// <summary>The note stands where the sentence has room for it; the result has it in any case.</summary>
    internal static Summary AddTo(Summary summary, Judgment judgment, Approval? approval) => approval is null || !judgment.Sews
        ? summary
        : summary with { Lead = Sentences.Fit(summary.Lead, $"Was {approval.Note}.") };
}
