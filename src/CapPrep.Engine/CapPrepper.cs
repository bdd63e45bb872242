using CapPrep.Engine.Briefs;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Desk;
using CapPrep.Engine.Production;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Verdicts;

namespace CapPrep.Engine;

/// <summary>The engine's one public verb.</summary>
public static class CapPrepper
{
    /// <summary>
    /// Everything that can be said of one tape on one cap, frame and machine. The same request gives the same answer,
    /// byte for byte, on every platform.
    /// </summary>
    /// <exception cref="ArgumentException">The tape holds no penetration; a reader refuses such a file.</exception>
    /// <exception cref="EngineFaultException">The engine broke one of its own promises; nothing may leave the service.</exception>
    public static Preparation Prepare(PrepareRequest request)
    {
        var received = Seat(request);
        var ordering = Ordering.Of(received, request.Label);
        var written = TapeFor(received, ordering, request.Label);
        var findings = FindingsOf(received, ordering, written);
        var judgment = Judgment.Of(findings, canSew: written is not null, isNewOrder: written is not null && written == ordering?.Proposed);
        var sewn = judgment.Sews ? written : null;
        var firstCap = FirstCapRule.Of(request.SewnBefore, judgment, request.Setup, findings);
        var needlePlan = sewn?.NeedlePlan ?? NeedlePlan.Of(received);
        return new Preparation
        {
            Verdict = judgment.Verdict,
            VerdictReasons = judgment.Reasons,
            Actors = judgment.Actors,
            Summary = Summaries.Of(judgment, findings, firstCap, received, needlePlan),
            FirstCap = firstCap,
            Advice = AdviceRule.Of(judgment, findings),
            Brief = BriefMaker.Of(received, findings, ordering?.Order),
            WaysOut = WaysOutFinder.Of(received, findings),
            Doubtful = DoubtfulPieces.Of(received),
            Tape = request.Tape,
            Facts = TapeCounts.Of(request.Tape, received.Stitches),
            Reading = received.Reading,
            Ticket = request.Ticket,
            Setup = request.Setup,
            Seating = SeatingOf(received, sewn),
            Findings = findings,
            ReceivedOrder = OrderCounts.Of(received.Stitches),
            Order = ordering?.Order,
            SettledRounds = ordering?.Rounds ?? 0,
            IsSettled = ordering?.IsSettled ?? true,
            LossCheck = (sewn ?? ordering?.Proposed ?? written)?.Losses,
            ProposedTape = ordering?.Proposed?.File.Bytes,
            TapeToSew = sewn?.File,
            NeedlePlan = needlePlan,
        };
    }

    private static Subject Seat(PrepareRequest request)
    {
        var stitches = StitchSequence.Of(request.Tape, request.Setup.Machine.Tape.TrimCount);
        if (stitches.Count == 0)
            throw new ArgumentException("The tape holds no penetration.", nameof(request));
        var seated = Seater.Seat(stitches, request.Ticket, request.Setup);
        return new Subject(request.Tape, stitches, request.Ticket, request.Setup, seated);
    }

    /// <summary>In the proposed order when that is used, else as received; null when the machine could not run it.</summary>
    private static SewTape? TapeFor(Subject received, Ordering? ordering, string label)
    {
        if (ordering is { Order.Used: UsedOrder.Proposed, Proposed: { } proposed })
            return proposed;
        return received.IsSeated && SewTape.CanWrite(received) ? SewTape.AsReceived(received, label) : null;
    }

    /// <summary>Of the received tape, and which of them the written one still has.</summary>
    private static IReadOnlyList<Finding> FindingsOf(Subject received, Ordering? ordering, SewTape? written)
    {
        var judged = received.With(ordering?.ReceivedRules);
        var sewnOrder = ordering is { Proposed: not null } && ordering.Proposed == written ? ordering.Order.ProposedRules : judged.OrderRules;
        return FindingList.Of(
            Inspector.Inspect(judged),
            written is null ? null : Inspector.InspectWritten(written.ReadBack, received.With(sewnOrder)));
    }

    /// <summary>The operator keys in where the tape to sew starts, which is seldom where the received one does.</summary>
    private static SeatedDesign? SeatingOf(Subject received, SewTape? written) => received.IsSeated && written is not null
        ? received.Seated with { KeyIn = Seater.KeyInFor(written.ReadBack.Seated.Origin, received.Seated.Box) }
        : received.SeatedOrNull;
}
