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

    internal static readonly Bar Left = new(-12, 0);

    internal static readonly Bar Right = new(3, 0);

    /// <summary>Two good bars about the seam, after a stop.</summary>
    internal static readonly Job Good = Foam(draft => draft.GoodBars());

    internal static Draft GoodBars(this Draft draft) => draft.Bars(Left, Right);

    /// <summary>A short line under the first bar, a stop, and the bars, trimmed apart.</summary>
    internal static Draft Bars(this Draft draft, params Bar[] bars)
    {
        draft.Mark();
        for (var i = 0; i < bars.Length; i++)
            draft = (i == 0 ? draft.ColorStop().Move(At(bars[i].Left, bars[i].Bottom)) : draft.Trim(At(bars[i].Left, bars[i].Bottom))).Sew(bars[i]);
        return draft;
    }

    /// <summary>A line that shows where foam is laid.</summary>
    internal static Draft Mark(this Draft draft) => draft.Move(new(-80, 50)).Run(25, new TapePoint(-80, 50), new(-80, 250));

    internal static Job Two(Func<Bar, Bar> change) => Foam(draft => draft.Bars(change(Left), change(Right)));

    /// <summary>Two bars so far apart, mm.</summary>
    internal static Job Apart(double gap) => Foam(draft => draft.Bars(new Bar(-9 - (gap / 2), 0), new Bar(gap / 2, 0)));

    /// <summary>A bar of 8 mm from here 25 mm to the right, closed at both ends, seated by the tape's origin.</summary>
    internal static Job Lying(double from) => Foam(draft => draft
        .Run(25, At(from + 4, 4), At(from + 20, 4)).ColorStop()
        .Move(At(from, 0)).Zigzag(from, from + 2.5, 0, 8, 0.3)
        .Trim(At(from + 22.5, 0)).Zigzag(from + 22.5, from + 25, 0, 8, 0.3)
        .Trim(At(from, 0)).Stitches(Enumerable.Range(0, 251).Select(row => At(from + (row / 10.0), row % 2 == 0 ? 0 : 8))))
        .Seating(new TicketSeating { CenterBy = SeatingCenter.Origin });

    /// <summary>A flat bar of satin in its own thread before or behind the two bars over foam.</summary>
    internal static Job PartFoam(bool flatLast) => Said(
        Technique.PartFoam,
        draft => flatLast
            ? draft.Stitch(new(-120, 0)).Sew(Left).Trim(new(30, 0)).Sew(Right).ColorStop().Move(new(-120, 330)).FlatBar()
            : draft.Move(new(-120, 330)).FlatBar().ColorStop().Move(new(-120, 0)).Sew(Left).Trim(new(30, 0)).Sew(Right),
        new TicketThread { Block = 1, Name = flatLast ? "White" : "Navy", Foam = flatLast, Action = flatLast ? StopAction.LayFoam : null },
        new() { Block = 2, Name = flatLast ? "Navy" : "White", Foam = !flatLast });

    private static Draft FlatBar(this Draft draft) => draft.Stitch(new(-120, 330)).Sew(Column.Upright(new(-120, 330), 40, 60));

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
