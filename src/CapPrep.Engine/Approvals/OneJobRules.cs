using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Approvals;

/// <summary>
/// What can be accepted for one job only: it hangs on this order, or the needle may strike the frame, so a repeat is
/// looked at anew.
/// </summary>
public static class OneJobRules
{
    private const string TicketGroup = "ticket.";

    /// <summary>Rules whose holds are about where needle and frame may meet.</summary>
    private static readonly string[] FrameRules =
        ["place.outside-field", "place.travel-outside", "place.posts", "place.brim-clearance"];

    /// <summary>True when a finding of this rule and severity is accepted for the next check of its order line only.</summary>
    public static bool Holds(string rule, Severity severity) =>
        rule.StartsWith(TicketGroup, StringComparison.Ordinal)
        || (severity == Severity.Hold && FrameRules.Contains(rule, StringComparer.Ordinal));
}
