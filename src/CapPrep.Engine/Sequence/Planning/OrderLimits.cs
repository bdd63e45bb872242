using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Shares above which an order is noted or warned of, and what makes another order worth a new tape.</summary>
/// <param name="Rules">Rule id, then the shares; a level that is switched off is null.</param>
/// <param name="BetterBy">Share of order cost and trim price, 0 to 1, that a new order must gain.</param>
public sealed record OrderLimits(IReadOnlyDictionary<string, ShareLimits> Rules, double BetterBy)
{
    internal Severity? Judge(string rule, double share) =>
        Rules.TryGetValue(rule, out var limits) ? limits.Judge(share) : null;

    /// <summary>The limits of the rules in force; rules that are switched off or have no row judge nothing.</summary>
    internal static OrderLimits Of(EffectiveRules rules) => new(
        OrderRuleIds.All
            .Select(rules.Find)
            .OfType<EffectiveRule>()
            .ToDictionary(rule => rule.Row.Rule, rule => new ShareLimits(ValueOf(rule, Severity.Note), ValueOf(rule, Severity.Warn)), StringComparer.Ordinal),
        rules.SewOrder.BetterBy ?? DefaultBetterBy);

    // House: ten points.
    private const double DefaultBetterBy = 0.10;

    private static double? ValueOf(EffectiveRule rule, Severity level) => rule.Limits
        .Where(limit => limit.Limit.Level == level)
        .Select(limit => limit.Limit.Value)
        .FirstOrDefault();
}

/// <param name="Note">Noted above this share.</param>
/// <param name="Warn">Warned of above this share.</param>
public readonly record struct ShareLimits(double? Note, double? Warn)
{
    internal Severity? Judge(double share) =>
        share > Warn ? Severity.Warn : share > Note ? Severity.Note : null;
}
