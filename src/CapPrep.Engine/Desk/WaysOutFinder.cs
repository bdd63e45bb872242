using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Desk;

/// <summary>Looks for ways out when a design is too large for its cap.</summary>
internal static class WaysOutFinder
{
    /// <summary>Null unless an open hold is about the size.</summary>
    internal static WaysOut? Of(Subject job, IReadOnlyList<Finding> findings)
    {
        if (!job.IsSeated || !findings.Any(IsSizeHold))
            return null;
        var scale = ScaleFit.Largest(job);
        return new(StyleFit.Of(job), ScaleFit.Scaled(job, scale), ScaleFit.Redigitized(job, scale));
    }

    private static bool IsSizeHold(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Hold } && Inspector.IsAboutSize(finding.Rule);
}
