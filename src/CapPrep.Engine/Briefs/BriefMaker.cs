using CapPrep.Engine.Checks;
using CapPrep.Engine.Production;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Briefs;

/// <summary>Writes the brief to the digitizer.</summary>
internal static class BriefMaker
{
    /// <summary>Null when nothing that is open asks a digitizer for anything.</summary>
    internal static Brief? Of(Subject job, IReadOnlyList<Finding> findings, SewOrder? order)
    {
        var asked = PointList.FindingsFor(findings);
        if (asked.Count == 0)
            return null;
        var points = PointList.Of(asked, job);
        return new Brief
        {
            Cap = Cap(job),
            Keep = Keep(job, points),
            Points = points,
            LeftOut = asked.Count - points.Count,
            WantedOrder = order is null ? [] : new WantedOrder(job, order).Steps(),
            Budget = Budget(job, order),
            SendBack = [.. SendBack(job)],
        };
    }

    private static BriefCap Cap(Subject job)
    {
        var zone = job.SeatedOrNull?.Zone;
        return new BriefCap(
            job.Setup.Style?.Name,
            job.Setup.Style?.CenterSeam is not null,
            job.Setup.Style?.Structure,
            job.Ticket.Location,
            zone?.Width.WarnAboveMm,
            zone?.Height.WarnAboveMm,
            job.SeatedOrNull?.Box.ToMillimeters().Bottom,
            job.Ticket.Technique,
            job.Ticket.ThreadWeightWt,
            job.Setup.Frame.Holds == FrameHold.FlatClamp ? "clamped all round" : "held at the brim only");
    }

    private static BriefKeep Keep(Subject job, IReadOnlyList<BriefPoint> points)
    {
        var box = job.Stitches.Extents().ToMillimeters();
        return new BriefKeep(
            box.Width,
            box.Height,
            [.. points.Where(point => point.Rule.StartsWith("place.", StringComparison.Ordinal)).Select(point => point.Number)],
            job.Stitches.Blocks,
            NeedlePlan.ThreadsOf(job.Ticket.Received));
    }

    /// <summary>What the better of the two orders needs.</summary>
    private static BriefBudget Budget(Subject job, SewOrder? order) => new(
        job.Stitches.Count,
        Math.Max(job.Stitches.Relations.Count(Relation.Cut), order?.Proposed.Trims ?? 0),
        order is null ? Math.Max(0, job.Stitches.Blocks - 1) : Math.Max(order.Received.ColorChanges, order.Proposed.ColorChanges));

    private static IEnumerable<string> SendBack(Subject job)
    {
        yield return "Do not change what is not listed.";
        yield return job.Setup.Style?.CenterSeam is null || !job.IsSeated || !job.LiesOnFront
            ? "Start and end at the bottom center of the design."
            : "Start and end at the bottom center, on the seam.";
        yield return job.Ticket.TapeIs == TapeOrientation.Turned
            ? "Keep the tape turned for the cap frame, as it was."
            : "Keep the tape upright. We turn it for the cap frame.";
        yield return "One color stop for each change of thread, in the order sewn.";
        yield return $"Send a DST tape for order {job.Ticket.Received.OrderNumber}, line {job.Ticket.Line}.";
        yield return "We check it again when it arrives.";
    }
}
