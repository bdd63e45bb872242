using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Verdicts;

/// <summary>What the shop does with a tape, why, and who must act. Only what is still open counts.</summary>
internal sealed record Judgment(Verdict Verdict, IReadOnlyList<VerdictReason> Reasons, IReadOnlyList<Actor> Actors)
{
    /// <summary>Holds that are still there, worst first.</summary>
    internal static IReadOnlyList<Finding> OpenHolds(IReadOnlyList<Finding> findings) => [.. findings.Where(IsOpenHold)];

    /// <param name="findings">The whole list.</param>
    /// <param name="canSew">False: no tape could be written, because the design lies on no cap or the machine cannot take it.</param>
    internal static Judgment Of(IReadOnlyList<Finding> findings, bool canSew)
    {
        var holds = OpenHolds(findings);
        var verdict = VerdictOf(holds, canSew);
        return new Judgment(verdict, [.. holds.Select(Reason)], ActorsOf(verdict, holds));
    }

    /// <summary>
    /// The order desk comes first: it must decide before a digitizer works. No order is proposed yet, so what may sew
    /// sews as received, whatever the ticket's mode.
    /// </summary>
    private static Verdict VerdictOf(IReadOnlyList<Finding> holds, bool canSew)
    {
        if (!canSew || holds.Any(hold => hold.Asks == Asks.ReturnToOrderDesk))
            return Verdict.ReturnToOrderDesk;
        return holds.Any(hold => hold.Asks == Asks.ReturnToDigitizer)
            ? Verdict.ReturnToDigitizer
            : Verdict.SewAsReceived;
    }

    private static IReadOnlyList<Actor> ActorsOf(Verdict verdict, IReadOnlyList<Finding> holds) => verdict switch
    {
        Verdict.SewAsReceived or Verdict.SewResequenced => [Actor.FramingStation, Actor.Operator],
        _ =>
        [
            .. holds
                .SelectMany(hold => new[] { Asked(hold.Asks), hold.Remedy?.Who })
                .Append(Asked(verdict))
                .OfType<Actor>()
                .Distinct()
                .Order(),
        ],
    };

    private static Actor? Asked(Asks asks) => asks switch
    {
        Asks.ReturnToOrderDesk => Actor.OrderDesk,
        Asks.ReturnToDigitizer => Actor.Digitizer,
        _ => null,
    };

    private static Actor? Asked(Verdict verdict) =>
        verdict == Verdict.ReturnToDigitizer ? Actor.Digitizer : Actor.OrderDesk;

    private static bool IsOpenHold(Finding finding) =>
        finding is { State: FindingState.Open, Severity: Severity.Hold };

    private static VerdictReason Reason(Finding hold) => new(hold.Rule, hold.Number, hold.Message);
}
