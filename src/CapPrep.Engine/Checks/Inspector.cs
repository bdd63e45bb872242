using System.Collections.Frozen;
using CapPrep.Engine.Checks.OnBorders;
using CapPrep.Engine.Checks.OnCap;
using CapPrep.Engine.Checks.OnLetters;
using CapPrep.Engine.Checks.OnOrder;
using CapPrep.Engine.Checks.OnSeam;
using CapPrep.Engine.Checks.OnStitches;
using CapPrep.Engine.Checks.OnTape;
using CapPrep.Engine.Checks.OnTechnique;
using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>Asks every rule in force about a tape; each rule row belongs to one function here and vice versa.</summary>
internal static class Inspector
{
    internal static readonly IReadOnlyList<Check> Checks =
    [
        .. CapChecks.All,
        .. OrderChecks.All,
        .. BorderChecks.All,
        .. SeamChecks.All,
        .. TechniqueChecks.All,
        .. StitchChecks.All,
        .. LetterChecks.All,
        .. TicketChecks.All,
        .. TapeChecks.All,
    ];

    private static readonly FrozenDictionary<string, Check> ByRule = Checks.ToFrozenDictionary(check => check.Rule);

    /// <summary>Findings in the order of the rule rows, not yet numbered.</summary>
    internal static IReadOnlyList<Finding> Inspect(Subject subject) => Ask(subject, _ => true);

    /// <summary>The findings that writing could have cured or caused.</summary>
    /// <param name="written">The written tape.</param>
    /// <param name="inNewOrder">The received tape with the order in which it is sewn.</param>
    internal static IReadOnlyList<Finding> InspectWritten(Subject written, Subject inNewOrder) =>
    [
        .. Ask(inNewOrder, check => check.AskAgain == Again.OfNewOrder),
        .. Ask(written, check => check.AskAgain == Again.OfWrittenTape),
    ];

    // What another cap style could cure.
    private static readonly FrozenSet<string> Size = FrozenSet.Create(
        "place.outside-field", "place.too-tall", "place.crown", "place.too-wide", "place.brim-clearance",
        "place.side-seam", "place.eyelet", "place.posts");

    /// <summary>Only the findings about the room that cap, frame and machine leave.</summary>
    internal static IReadOnlyList<Finding> InspectSize(Subject subject) => Ask(subject, check => IsAboutSize(check.Rule));

    /// <summary>True when a rule is about the room that cap, frame and machine leave.</summary>
    internal static bool IsAboutSize(string rule) => Size.Contains(rule);

    /// <summary>True when a rule is asked again once a tape was written.</summary>
    internal static bool IsAskedAgain(string rule) => ByRule[rule].AskAgain != Again.Never;

    /// <summary>True when a rule judges the order of sewing.</summary>
    internal static bool IsAboutOrder(string rule) => ByRule[rule].AskAgain == Again.OfNewOrder;

    /// <summary>True when a rule says the same of a part of what it met, whatever tape was written.</summary>
    internal static bool CanBeAskedInPart(string rule) => !IsAskedAgain(rule);

    /// <summary>What one rule finds beside some places; null: nothing.</summary>
    internal static Finding? InspectRule(Subject subject, string rule, Func<Place, bool> except) =>
        subject.Setup.Rules.Find(rule) is { } inForce ? Raising.Raise(subject, CheckOf(rule), inForce, except) : null;

    private static IReadOnlyList<Finding> Ask(Subject subject, Func<Check, bool> wanted) =>
    [
        .. subject.Setup.Rules.Rows
            .Where(rule => !rule.Off && Applies(rule.Row.AppliesTo, subject))
            .Select(rule => (Rule: rule, Check: CheckOf(rule.Row.Rule)))
            .Where(pair => wanted(pair.Check) && (pair.Check.Needs == Needs.TapeAndTicket || subject.IsSeated))
            .Select(pair => Raising.Raise(subject, pair.Check, pair.Rule))
            .OfType<Finding>(),
    ];

    private static Check CheckOf(string rule) => ByRule.TryGetValue(rule, out var check)
        ? check
        : throw new EngineFaultException($"The rule row {rule} has no function.");

    private static bool Applies(RuleScope scope, Subject subject) =>
        Names(scope.Locations, subject.Ticket.Location)
        && Names(scope.HeldBy, subject.Setup.Frame.Holds)
        && Names(scope.Techniques, subject.Ticket.Technique)
        && (!scope.CenterSeamOnly || subject.Setup.Style?.CenterSeam is not null);

    private static bool Names<T>(IReadOnlyList<T> scope, T value) => scope.Count == 0 || scope.Contains(value);
}
