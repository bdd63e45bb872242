using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Approvals;

/// <summary>A person's word that what a rule found in these stitches may stay.</summary>
public sealed record Acceptance
{
    /// <summary>Id of the decision.</summary>
    public required string Decision { get; init; }

    public required string Rule { get; init; }

    /// <summary>Null: wherever the rule meets something in these stitches.</summary>
    public AcceptedElement? Element { get; init; }

    public required SeenFinding Seen { get; init; }

    public required string By { get; init; }

    public string? Reason { get; init; }

    public required DateTimeOffset At { get; init; }
}

/// <summary>An element as it was read when it was accepted; one that is read otherwise now is another.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Stitches">Penetrations of the received tape, from 1.</param>
public sealed record AcceptedElement(int Number, StitchRange Stitches);

/// <summary>What the person had before them.</summary>
/// <param name="Severity">The level whose limit was passed.</param>
/// <param name="Limit">That limit; null where the rule has none.</param>
/// <param name="Measured">The worst; null where nothing is measured.</param>
/// <param name="Message">The finding's sentence.</param>
public sealed record SeenFinding(Severity Severity, double? Limit, double? Measured, string Message)
{
    /// <summary>
    /// Whether the word still holds for a finding of the same rule: the same limit is passed and nothing worse is
    /// measured. What is not measured is the same as long as it says the same.
    /// </summary>
    internal bool IsStill(Finding now)
    {
        if (now.Severity != Severity || now.Limit.Value != Limit || now.Measured is null != Measured is null)
            return false;
        return now.Limit.Is switch
        {
            _ when Measured is null => now.Message == Message,
            LimitIs.AtMost => now.Measured!.Value <= Measured,
            LimitIs.AtLeast => now.Measured!.Value >= Measured,
            _ => now.Measured!.Value == Measured,
        };
    }
}

/// <summary>A finding that counts for nothing any more, and by whose word.</summary>
/// <param name="Finding">As it would stand in the list; numbered behind it.</param>
/// <param name="By">At least one.</param>
public sealed record AcceptedFinding(Finding Finding, IReadOnlyList<Acceptance> By);
