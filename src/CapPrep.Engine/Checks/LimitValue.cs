using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>The number behind a limit that is given as a place in the catalog.</summary>
public static class LimitValue
{
    /// <summary>Places that a limit may point to.</summary>
    internal static readonly IReadOnlyList<(string From, string Pointer)> Places =
    [
        ("zone", "height/warnAboveMm"), ("zone", "height/holdAboveMm"),
        ("zone", "width/warnAboveMm"), ("zone", "width/holdAboveMm"),
        ("zone", "topLine/warnMm"), ("zone", "topLine/holdMm"),
        ("zone", "brimClearance/nominalMm"), ("zone", "brimClearance/warnBelowMm"),
        ("capFrame", "strapTopMm"), ("machine", "needles"),
    ];

    /// <summary>Null where a limit has no number, or the place has none: no zone, no top line, no machine given.</summary>
    public static double? Of(RuleLimit limit, Zone? zone, CapFrame frame, Machine? machine, double xMm = 0) =>
        limit.From is null ? limit.Value : At(limit, zone, frame, machine, xMm) + limit.Plus;

    private static double? At(RuleLimit limit, Zone? zone, CapFrame frame, Machine? machine, double xMm) =>
        (limit.From, limit.Pointer) switch
        {
            ("zone", "height/warnAboveMm") => zone?.Height.WarnAboveMm,
            ("zone", "height/holdAboveMm") => zone?.Height.HoldAboveMm,
            ("zone", "width/warnAboveMm") => zone?.Width.WarnAboveMm,
            ("zone", "width/holdAboveMm") => zone?.Width.HoldAboveMm,
            ("zone", "topLine/warnMm") => zone?.TopLineAt(xMm)?.WarnMm,
            ("zone", "topLine/holdMm") => zone?.TopLineAt(xMm)?.HoldMm,
            ("zone", "brimClearance/nominalMm") => zone?.BrimClearance.NominalMm,
            ("zone", "brimClearance/warnBelowMm") => zone?.BrimClearance.WarnBelowMm,
            ("capFrame", "strapTopMm") => frame.StrapTopMm,
            ("machine", "needles") => machine?.Needles,
            _ => throw new ArgumentException($"No limit can be taken from {limit.From} {limit.Pointer}.", nameof(limit)),
        };
}
