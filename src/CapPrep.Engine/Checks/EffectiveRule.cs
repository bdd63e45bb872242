using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>One rule with its limits in force.</summary>
/// <param name="Row">The rule as the built-in book has it.</param>
/// <param name="Limits">
/// Mildest level first. A level stands twice where a shop moved a limit that may not go below a warn: then the one
/// that is passed first counts.
/// </param>
/// <param name="Off">The book switched it off.</param>
public sealed record EffectiveRule(RuleRow Row, IReadOnlyList<EffectiveLimit> Limits, bool Off)
{
    /// <summary>
    /// The number of a level at one cap, frame and machine, and the book that set it; null where the level is absent
    /// or has no number there.
    /// </summary>
    /// <param name="level">The level asked for.</param>
    /// <param name="zone">The zone sewn on, null when the style is unknown.</param>
    /// <param name="frame">The cap frame.</param>
    /// <param name="machine">Needed only by rules that take their limit from it.</param>
    /// <param name="xMm">Where, for limits that fall away to the sides.</param>
    public (double Value, VersionedId SetBy)? LimitFor(
        Severity level, Zone? zone, CapFrame frame, Machine? machine = null, double xMm = 0)
    {
        (double Value, VersionedId SetBy)? first = null;
        foreach (var limit in Limits.Where(limit => limit.Limit.Level == level))
        {
            if (LimitValue.Of(limit.Limit, zone, frame, machine, xMm) is { } value
                && (first is not { } found || RuleMerge.IsMilder(Row.Is, found.Value, value)))
                first = (value, limit.SetBy);
        }

        return first;
    }

    /// <summary>
    /// The severity in force for something that is of <paramref name="level"/> by its nature: that level, or the next
    /// milder one that is switched on, or null.
    /// </summary>
    public (Severity Level, VersionedId SetBy)? SeverityFor(Severity level) =>
        Limits.LastOrDefault(limit => limit.Limit.Level <= level) is { } found ? (found.Limit.Level, found.SetBy) : null;

    internal static EffectiveRule Of(RuleRow row, VersionedId house) =>
        new(row, Ordered(row.Limits.Select(limit => new EffectiveLimit(limit, house))), Off: false);

    /// <summary>Changes in the order given, all set by one book.</summary>
    internal EffectiveRule With(IEnumerable<RuleChange> changes, VersionedId book)
    {
        var changed = changes.Aggregate(this, (rule, change) => rule.With(change, book));
        return Row.HoldStaysAtLeastWarn ? changed with { Off = false, Limits = Ordered(changed.Limits.Concat(Floor(changed))) } : changed;
    }

    private EffectiveRule With(RuleChange change, VersionedId book) => this with
    {
        Off = change.Off ?? Off,
        Limits = Ordered(
        [
            .. Limits.Where(limit => change.Limits.All(changed => changed.Level != limit.Limit.Level)),
            .. RuleMerge.Listed(change).Select(limit => new EffectiveLimit(limit, book)),
        ]),
    };

    /// <summary>Where the hold of this rule was moved or switched off, what held before still warns.</summary>
    private IEnumerable<EffectiveLimit> Floor(EffectiveRule changed) => Limits
        .Where(limit => limit.Limit.Level == Severity.Hold && !changed.Limits.Contains(limit))
        .Select(limit => limit with { Limit = limit.Limit with { Level = Severity.Warn } });

    private static EffectiveLimit[] Ordered(IEnumerable<EffectiveLimit> limits) =>
        [.. limits.OrderBy(limit => limit.Limit.Level)];
}

/// <summary>A limit in force and the book that set it.</summary>
public sealed record EffectiveLimit(RuleLimit Limit, VersionedId SetBy);
