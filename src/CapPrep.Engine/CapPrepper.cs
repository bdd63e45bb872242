using CapPrep.Engine.Checks;
using CapPrep.Engine.Production;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence;
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
        var written = received.IsSeated && SewTape.CanWrite(received) ? SewTape.Write(received, request.Label) : null;
        var findings = FindingList.Of(
            Inspector.Inspect(received),
            written is null ? null : Inspector.InspectWritten(written.ReadBack));
        var judgment = Judgment.Of(findings, canSew: written is not null);
        var firstCap = FirstCapRule.Of(request.SewnBefore, request.Setup, findings);
        var needlePlan = NeedlePlan.Of(received.Stitches, request.Ticket.Received, request.Setup.Machine);
        var sews = judgment.Verdict is Verdict.SewAsReceived or Verdict.SewResequenced;
        return new Preparation
        {
            Verdict = judgment.Verdict,
            VerdictReasons = judgment.Reasons,
            Actors = judgment.Actors,
            Summary = Summaries.Of(judgment, findings, firstCap, received, needlePlan),
            FirstCap = firstCap,
            Tape = request.Tape,
            Facts = TapeCounts.Of(request.Tape, received.Stitches),
            Ticket = request.Ticket,
            Setup = request.Setup,
            Seating = SeatingOf(received, sews ? written : null),
            Findings = findings,
            ReceivedOrder = OrderCounts.Of(received.Stitches),
            TapeToSew = sews ? written?.File : null,
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

    /// <summary>The operator keys in where the tape to sew starts, which is seldom where the received one does.</summary>
    private static SeatedDesign? SeatingOf(Subject received, SewTape? written) => received.IsSeated && written is not null
        ? received.Seated with { KeyIn = Seater.KeyInFor(written.ReadBack.Seated.Origin, received.Seated.Box) }
        : received.SeatedOrNull;
}
