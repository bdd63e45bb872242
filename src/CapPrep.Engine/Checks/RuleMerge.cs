using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>How changes of a book are laid over the limits of a built-in rule.</summary>
internal static class RuleMerge
{
    /// <summary>The limits after a change; what it does not list stays.</summary>
    internal static IReadOnlyList<RuleLimit> Apply(IReadOnlyList<RuleLimit> limits, RuleChange change) =>
        [.. limits.Where(limit => change.Limits.All(changed => changed.Level != limit.Level)), .. Listed(change)];

    /// <summary>The limits that a change sets, without the levels it switches off.</summary>
    internal static IEnumerable<RuleLimit> Listed(RuleChange change) => change.Limits
        .Where(changed => !changed.Off)
        .Select(changed => new RuleLimit(changed.Level) { Value = changed.Value });

    /// <summary>
    /// True when something that holds in the built-in book would be no more than a note, as far as numbers alone
    /// can tell.
    /// </summary>
    internal static bool IsLoosened(RuleRow row, IReadOnlyList<RuleLimit> limits)
    {
        if (row.Limits.FirstOrDefault(limit => limit.Level == Severity.Hold) is not { } held)
            return false;
        var serious = limits.Where(limit => limit.Level >= Severity.Warn).ToArray();
        return held.Value is { } value
            ? serious.All(limit => limit.From is null && (limit.Value is not { } now || IsMilder(row.Is, now, value)))
            : serious.Length == 0;
    }

    /// <summary>True when a measured value passes <paramref name="limit"/> later than <paramref name="other"/>.</summary>
    internal static bool IsMilder(LimitIs @is, double limit, double other) => @is switch
    {
        LimitIs.AtMost => limit > other,
        LimitIs.AtLeast => limit < other,
        _ => false,
    };
}
