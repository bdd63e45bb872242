using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Production;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Revisions;

/// <summary>Compares a tape with the one that came before it for the same order, line and location.</summary>
internal static class RevisionMaker
{
    private const int MostChanges = 50;

    /// <summary>Null: none came before.</summary>
    internal static RevisionReport? Of(
        EarlierJob? earlier, Subject received, IReadOnlyList<Finding> findings, IReadOnlyList<AcceptedFinding> accepted)
    {
        if (earlier is null)
            return null;
        var same = StitchesHash.Of(earlier.Tape) == StitchesHash.Of(received.Tape);
        var now = new DesignPoints(received.Stitches, received.Reading, received.Ticket.TapeIs == TapeOrientation.Turned);
        var then = same ? now : PointsOf(earlier, received);
        var shift = same ? TapePoint.Origin : DesignShift.Of(then, now);
        var points = new PointMatching(earlier.Findings, findings, accepted, OnCap(earlier, received, then, now, shift));
        var changes = same ? [] : OutsideChanges.Of(then, now, shift, [.. earlier.Findings.Where(finding => finding.Asked is not null)], box => OnCap(box, received, now));
        return new RevisionReport
        {
            Of = earlier.Id,
            SameStitches = same,
            Solved = points.Solved(),
            StillOpen = points.StillOpen(),
            New = points.New(),
            ChangedOutside = [.. changes.Take(MostChanges)],
            ChangesLeftOut = Math.Max(0, changes.Count - MostChanges),
        };
    }

    private static DesignPoints PointsOf(EarlierJob earlier, Subject received)
    {
        var stitches = StitchSequence.Of(earlier.Tape, received.Setup.Machine.Tape.TrimCount);
        var threads = ThreadNumbers.Of(NeedlePlan.ThreadsOf(earlier.Ticket.Received), stitches.Blocks);
        return new DesignPoints(stitches, DesignReader.Read(stitches, threads), earlier.Ticket.TapeIs == TapeOrientation.Turned);
    }

    /// <summary>How far the cap's coordinates of the same stitch differ; nothing where one of the designs lay on no cap.</summary>
    private static PointMm OnCap(EarlierJob earlier, Subject received, DesignPoints then, DesignPoints now, TapePoint shift)
    {
        if (earlier.SeatedMm is not { } before || !received.IsSeated)
            return new(0, 0);
        var seated = received.Seated.Box.ToMillimeters();
        return new(
            seated.Left - before.Left + ((shift.X - now.Box.Left + then.Box.Left) / 10.0),
            seated.Bottom - before.Bottom + ((shift.Y - now.Box.Bottom + then.Box.Bottom) / 10.0));
    }

    private static BoxMm? OnCap(Box box, Subject received, DesignPoints now) => received.IsSeated
        ? box.Shift(received.Seated.Box.Left - now.Box.Left, received.Seated.Box.Bottom - now.Box.Bottom).ToMillimeters()
        : null;
}
