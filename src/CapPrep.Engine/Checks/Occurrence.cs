using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>One place where a rule's function met what the rule is about, before it is weighed against the limits.</summary>
internal sealed record Occurrence(Place Place)
{
    /// <summary>In the rule's unit; null where nothing is measured.</summary>
    internal double? Measured { get; init; }

    /// <summary>Set where the function itself decides how bad it is; else the limits do.</summary>
    internal Severity? Level { get; init; }

    /// <summary>The limit at this very place, where it differs from place to place.</summary>
    internal double? LimitHere { get; init; }

    /// <summary>How often it occurs there, where the place stands for several.</summary>
    internal int Times { get; init; } = 1;

    /// <summary>The sentence of this occurrence, for rules that say something else each time.</summary>
    internal string Text { get; init; } = "";
}
