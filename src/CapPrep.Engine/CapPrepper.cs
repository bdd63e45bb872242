using CapPrep.Engine.Approvals;
using CapPrep.Engine.Briefs;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Desk;
using CapPrep.Engine.Production;
using CapPrep.Engine.Revisions;
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
        var approval = Approval.FollowedBy(request);
        var received = Seat(request, approval);
        var ordering = Ordering.Of(received, request.Label, approval);
        var written = TapeFor(received, ordering, approval, request.Label);
        var (findings, accepted) = FindingsOf(received, ordering, written, request.Acceptances);
        var judgment = Judgment.Of(findings, canSew: written is not null, isNewOrder: written is not null && (approval?.Sewn is not null || written == ordering?.Proposed));
        var sewn = judgment.Sews ? written : null;
        var firstCap = FirstCapRule.Of(request, approval, judgment, findings);
        var needlePlan = sewn?.NeedlePlan ?? NeedlePlan.Of(received);
        return new Preparation
        {
            Verdict = judgment.Verdict,
            VerdictReasons = judgment.Reasons,
            Actors = judgment.Actors,
            Summary = ApprovalWords.AddTo(Summaries.Of(judgment, findings, firstCap, received, needlePlan), judgment, approval),
            FirstCap = firstCap,
            Advice = AdviceRule.Of(judgment, findings),
            Brief = BriefMaker.Of(received, findings, ordering?.Order),
            WaysOut = WaysOutFinder.Of(received, findings),
            Doubtful = DoubtfulPieces.Of(received),
            Tape = request.Tape,
            Facts = TapeCounts.Of(request.Tape, received.Stitches),
            Reading = received.Reading,
            TextLines = received.TextLines,
            Ticket = request.Ticket,
            Setup = request.Setup,
            Seating = SeatingOf(received, sewn),
            Findings = findings,
            Accepted = accepted,
            Approval = approval,
            Revision = RevisionMaker.Of(request.Earlier, received, findings, accepted),
            ReceivedOrder = OrderCounts.Of(received.Stitches),
            Order = ordering?.Order,
            Shift = ordering?.Shift,
            SettledRounds = ordering?.Rounds ?? 0,
            IsSettled = ordering?.IsSettled ?? true,
            LossCheck = (sewn ?? ordering?.Proposed ?? written)?.Losses,
            ProposedTape = ordering?.Proposed?.File.Bytes,
            TapeToSew = sewn?.File,
            NeedlePlan = needlePlan,
        };
    }

    /// <summary>Approved stitches start and end where they always did.</summary>
    private static Subject Seat(PrepareRequest request, Approval? approval)
    {
        var rules = request.Setup.Rules;
        var setup = approval is null ? request.Setup : request.Setup with
        {
            Rules = rules with { SewOrder = rules.SewOrder with { StartEndAtBottomCenter = false } },
        };
        var stitches = StitchSequence.Of(request.Tape, request.Setup.Machine.Tape.TrimCount);
        if (stitches.Count == 0)
            throw new ArgumentException("The tape holds no penetration.", nameof(request));
        var seated = Seater.Seat(stitches, request.Ticket, setup);
        return new Subject(request.Tape, stitches, request.Ticket, setup, seated);
    }

    /// <summary>In the proposed order when that is used, else as received; null when the machine could not run it.</summary>
    private static SewTape? TapeFor(Subject received, Ordering? ordering, Approval? approval, string label)
    {
        if (ordering is { Order.Used: UsedOrder.Proposed, Proposed: { } proposed })
            return proposed;
        if (approval?.Sewn is { } approved)
            return received.IsSeated ? ApprovedWriting.Write(received, approved, label) : null;
        return received.IsSeated && SewTape.CanWrite(received) ? SewTape.AsReceived(received, label) : null;
    }

    /// <summary>Of the received tape, and which of them the written one still has.</summary>
    private static (IReadOnlyList<Finding> Findings, IReadOnlyList<AcceptedFinding> Accepted) FindingsOf(
        Subject received, Ordering? ordering, SewTape? written, IReadOnlyList<Acceptance> acceptances)
    {
        var judged = received.With(ordering?.ReceivedRules);
        var inSewnOrder = ordering is { Proposed: not null } && ordering.Proposed == written
            ? received.With(ordering.Order.ProposedRules, ordering.Order.Order)
            : judged;
        var all = FindingList.Compared(
            Inspector.Inspect(judged),
            written is null ? null : Inspector.InspectWritten(written.ReadBack, inSewnOrder));
        return AcceptedWork.Split(all, judged, acceptances);
    }

    /// <summary>The operator keys in where the tape to sew starts, which is seldom where the received one does.</summary>
    private static SeatedDesign? SeatingOf(Subject received, SewTape? written) => received.IsSeated && written is not null
        ? received.Seated with { KeyIn = Seater.KeyInFor(written.ReadBack.Seated.Origin, received.Seated.Box) }
        : received.SeatedOrNull;
}
