using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Seating;

/// <summary>Which x of an upright design comes onto the center seam.</summary>
internal static class DesignCenter
{
    /// <summary>
    /// Text lines are not known, so <see cref="SeatingCenter.MainText"/> is answered by the box, and the answer
    /// says so.
    /// </summary>
    /// <returns>What was used, and its x in tape units of the upright tape.</returns>
    internal static (SeatingCenter Used, int X) Of(StitchSequence stitches, Box upright, ResolvedTicket ticket)
    {
        var sign = ticket.TapeIs == TapeOrientation.Turned ? -1 : 1;
        return ticket.CenterBy switch
        {
            SeatingCenter.Origin => (SeatingCenter.Origin, 0),
            SeatingCenter.X => (SeatingCenter.X, sign * Tenths.FromMillimeters(ticket.CenterXMm).Value),
            SeatingCenter.Weight when WeightX2(stitches) is { } doubled => (SeatingCenter.Weight, Half(sign * doubled)),
            _ => (SeatingCenter.Box, Half(upright.Left + upright.Right)),
        };
    }

    /// <summary>
    /// Twice the mean x of the thread laid: every connected stitch counts with its length, since covered area is
    /// thread length times pitch. Null when no stitch has a length.
    /// </summary>
    private static double? WeightX2(StitchSequence stitches)
    {
        double length = 0, moment = 0;
        for (var i = 1; i < stitches.Count; i++)
        {
            if (stitches.Relations[i] != Relation.Thread)
                continue;
            double dx = stitches.X[i] - stitches.X[i - 1];
            double dy = stitches.Y[i] - stitches.Y[i - 1];
            var stitch = Math.Sqrt((dx * dx) + (dy * dy));
            length += stitch;
            moment += stitch * ((double)stitches.X[i] + stitches.X[i - 1]);
        }

        return length > 0 ? moment / length : null;
    }

    /// <summary>Halves go away from zero, so that a mirrored design is seated as the mirror image.</summary>
    private static int Half(double doubled) => (int)Math.Round(doubled / 2, MidpointRounding.AwayFromZero);
}
