using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>The built-in book with a shop's book and its matching overrides laid over it, for one ticket.</summary>
/// <param name="Rows">In the built-in order: what costs most first.</param>
/// <param name="SewOrder">Order settings in force.</param>
/// <param name="Book">The book the ticket asked for.</param>
public sealed record EffectiveRules(
    IReadOnlyList<EffectiveRule> Rows,
    OrderSettings SewOrder,
    VersionedId Book)
{
    /// <summary>The rule of that id, or null when it is switched off.</summary>
    public EffectiveRule? Find(string rule) => Rows.FirstOrDefault(row => row.Row.Rule == rule && !row.Off);
}

/// <summary>One rule with its limits in force.</summary>
public sealed record EffectiveRule(RuleRow Row, IReadOnlyList<EffectiveLimit> Limits, bool Off);

/// <summary>A limit in force and the book that set it.</summary>
public sealed record EffectiveLimit(RuleLimit Limit, VersionedId SetBy);
