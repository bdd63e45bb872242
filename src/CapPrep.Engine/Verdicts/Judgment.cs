using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Verdicts;

/// <summary>What the shop does with a tape, why, and who must act. Only what is still open counts.</summary>
internal sealed record Judgment(Verdict Verdict, IReadOnlyList<VerdictReason> Reasons, IReadOnlyList<Actor> Actors)
{
    /// <summary>Holds that are still there, worst first.</summary>
    internal static IReadOnlyList<Finding> OpenHolds(IReadOnlyList<Finding> findings) => [.. findings.Where(IsOpenHold)];

    /// <summary>The tape may sew, in one of the two orders.</summary>
    internal bool Sews => Verdict is Verdict.SewAsReceived or Verdict.SewResequenced;

    /// <summary>What the holds ask for that the verdict answers.</summary>
    internal Asks Asked => Verdict switch
    {
        Verdict.ReturnToOrderDesk => Asks.ReturnToOrderDesk,
        Verdict.ReturnToDigitizer => Asks.ReturnToDigitizer,
        _ => Asks.Nothing,
    };

    /// <param name="findings">The whole list.</param>
    /// <param name="canSew">False: no tape could be written, because the design lies on no cap or the machine cannot take it.</param>
    /// <param name="isNewOrder">The written tape sews in another order than the received one.</param>
    internal static Judgment Of(IReadOnlyList<Finding> findings, bool canSew, bool isNewOrder)
    {
        var holds = OpenHolds(findings);
        var verdict = VerdictOf(holds, canSew, isNewOrder);
        var reasons = verdict == Verdict.SewResequenced ? findings.Where(IsHelpedByOrder) : holds;
        return new Judgment(verdict, [.. reasons.Select(Reason)], ActorsOf(verdict, holds));
    }

    /// <summary>The order desk comes first: it must decide before a digitizer works.</summary>
    private static Verdict VerdictOf(IReadOnlyList<Finding> holds, bool canSew, bool isNewOrder)
    {
        if (!canSew || holds.Any(hold => hold.Asks == Asks.ReturnToOrderDesk))
            return Verdict.ReturnToOrderDesk;
        return holds.Any(hold => hold.Asks == Asks.ReturnToDigitizer) ? Verdict.ReturnToDigitizer
            : isNewOrder ? Verdict.SewResequenced
            : Verdict.SewAsReceived;
    }

    private static IReadOnlyList<Actor> ActorsOf(Verdict verdict, IReadOnlyList<Finding> holds) => verdict switch
    {
        Verdict.SewAsReceived or Verdict.SewResequenced => [Actor.FramingStation, Actor.Operator],
        _ =>
        [
            .. holds
                .SelectMany(hold => new[] { ActorFor(hold.Asks), hold.Remedy?.Who })
                .Append(ActorFor(verdict))
                .OfType<Actor>()
                .Distinct()
                .Order(),
        ],
    };

    private static Actor? ActorFor(Asks asks) => asks switch
    {
        Asks.ReturnToOrderDesk => Actor.OrderDesk,
        Asks.ReturnToDigitizer => Actor.Digitizer,
        _ => null,
    };

    private static Actor? ActorFor(Verdict verdict) =>
        verdict == Verdict.ReturnToDigitizer ? Actor.Digitizer : Actor.OrderDesk;

    private static bool IsHelpedByOrder(Finding finding) => Inspector.IsAboutOrder(finding.Rule)
        && (finding.State == FindingState.Solved || finding.InNewOrder?.Value < finding.Measured?.Value);

    private static bool IsOpenHold(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Hold };

    private static VerdictReason Reason(Finding hold) => new(hold.Rule, hold.Number, hold.Message);
}
