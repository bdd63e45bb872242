using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>Columns as they are sewn over foam; sizes in mm, the seam is at x = 0 for a design that lies evenly about it.</summary>
internal static class FoamDrafts
{
    /// <summary>A good foam column: 9 mm wide, needle points 0.18 mm apart on each side, both ends closed.</summary>
    internal sealed record Bar(double Left, double Bottom)
    {
        internal double Width { get; init; } = 9;

        internal double Height { get; init; } = 30;

        internal double Pitch { get; init; } = 0.18;

        internal bool IsFootClosed { get; init; } = true;

        internal bool IsHeadClosed { get; init; } = true;

        /// <summary>Share of the width that the closed ends reach over.</summary>
        internal double EndShare { get; init; } = 1;

        internal double Right => Left + Width;

        internal double Top => Bottom + Height;
    }

    /// <summary>Sews it from the foot up: short columns across both ends, then the rows.</summary>
    internal static Draft Sew(this Draft draft, Bar bar)
    {
        if (bar.IsFootClosed)
            draft.End(bar, bar.Bottom, 1);
        if (bar.IsHeadClosed)
            draft.End(bar, bar.Top, -1);
        return draft.Zigzag(bar.Left, bar.Right, bar.Bottom, bar.Top, bar.Pitch);
    }

    /// <summary>Level rows from the bottom up, two of them a pitch.</summary>
    internal static Draft Zigzag(this Draft draft, double left, double right, double bottom, double top, double pitch)
    {
        var rows = (int)Math.Round(2 * (top - bottom) / pitch);
        return draft.Stitches(Enumerable.Range(0, rows + 1).Select(row => At(row % 2 == 0 ? left : right, bottom + (row * (top - bottom) / rows))));
    }

    internal static TapePoint At(double xMm, double yMm) => new((int)Math.Round(10 * xMm), (int)Math.Round(10 * yMm));

    internal static Job Foam(Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) => Said(Technique.Foam, sew, threads);

    internal static Job Said(Technique? technique, Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) => RuleCases.Drafted(sew) with
    {
        Ticket = Job.Clean.Ticket with { Technique = technique, Threads = threads.Count == 0 ? null : threads },
    };

    /// <summary>Rows of 2.5 mm across an end, which the column then covers.</summary>
    private static Draft End(this Draft draft, Bar bar, double edge, int inward)
    {
        var length = bar.EndShare * bar.Width;
        var rows = (int)Math.Round(2 * length / 0.4);
        return draft.Stitches(Enumerable.Range(0, rows + 1).Select(row => At(
            bar.Left + (row * length / rows), row % 2 == 0 ? edge : edge + (2.5 * inward))));
    }
}
