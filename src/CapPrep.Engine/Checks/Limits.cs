using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>The limits of one rule in force for one cap, frame and machine, as numbers.</summary>
internal sealed class Limits
{
    /// <summary>Limits and measured values meet as whole thousandths, so that equal figures are equal.</summary>
    private const int StepsPerUnit = 1000;

    private static readonly Severity[] WorstFirst = [Severity.Hold, Severity.Warn, Severity.Note];

    private readonly EffectiveRule _rule;
    private readonly PassedLimit[] _levels;

    private Limits(EffectiveRule rule, PassedLimit[] levels) => (_rule, _levels) = (rule, levels);

    internal LimitIs Is => _rule.Row.Is;

    /// <summary>The number of the mildest level that is switched on; null for a rule without numbers.</summary>
    internal double? Mildest => _levels.LastOrDefault()?.Value;

    /// <param name="rule">The rule in force.</param>
    /// <param name="subject">Names zone, frame and machine, from which limits may be taken.</param>
    /// <param name="xMm">Where, for limits that fall away to the sides.</param>
    internal static Limits Of(EffectiveRule rule, Subject subject, double xMm = 0) => new(
        rule,
        [.. WorstFirst
            .Select(level => (level, limit: rule.LimitFor(level, subject.SeatedOrNull?.Zone, subject.Setup.Frame, subject.Setup.Machine, xMm)))
            .Where(entry => entry.limit is not null)
            .Select(entry => new PassedLimit(entry.level, entry.limit!.Value.Value, entry.limit.Value.SetBy))]);

    /// <summary>The number of a level that is switched on, or null.</summary>
    internal double? At(Severity level) => ValueOf(level);

    /// <summary>What an occurrence passes: the level its function names, or the worst one by its measured value.</summary>
    internal PassedLimit? PassedBy(Occurrence occurrence)
    {
        var passed = occurrence.Level is { } level ? InForce(level) : PassedBy(occurrence.Measured);
        return passed is null ? null : passed with { Value = occurrence.LimitHere ?? passed.Value };
    }

    /// <summary>The worst limit that a measured value passes; of a rule without numbers its worst level.</summary>
    internal PassedLimit? PassedBy(double? measured)
    {
        if (Is == LimitIs.None)
            return InForce(Severity.Hold);
        foreach (var level in _levels)
        {
            if (measured is { } value && Passes(value, level.Value!.Value))
                return level;
        }

        return null;
    }

    /// <summary>The worst limit up to a level that a measured value passes, of a rule with numbers.</summary>
    /// <param name="measured">In the unit of the limits.</param>
    /// <param name="atMost">Worse levels are left out, as where the measuring is in doubt.</param>
    internal PassedLimit? PassedBy(double measured, Severity atMost) =>
        _levels.FirstOrDefault(level => level.Level <= atMost && Passes(measured, level.Value!.Value));

    /// <summary>True when <paramref name="a"/> is worse than <paramref name="b"/> for this rule.</summary>
    internal bool IsWorse(double a, double b) => Is == LimitIs.AtLeast ? a < b : a > b;

    /// <summary>That level or the next milder one that is switched on.</summary>
    private PassedLimit? InForce(Severity wanted) => _rule.SeverityFor(wanted) is { } found
        ? new PassedLimit(found.Level, ValueOf(found.Level), found.SetBy)
        : null;

    private double? ValueOf(Severity level) => _levels.FirstOrDefault(entry => entry.Level == level)?.Value;

    private bool Passes(double measured, double limit) => Is == LimitIs.AtLeast
        ? Steps(measured) < Steps(limit)
        : Steps(measured) > Steps(limit);

    private static long Steps(double value) => (long)Math.Round(value * StepsPerUnit, MidpointRounding.AwayFromZero);
}

/// <summary>A limit that was passed.</summary>
/// <param name="Value">Null where the rule has no number.</param>
/// <param name="SetBy">The book it comes from.</param>
internal sealed record PassedLimit(Severity Level, double? Value, VersionedId SetBy);
