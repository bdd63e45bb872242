using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks.OnBorders;

/// <summary>Filled boxes and what is sewn along their edges; lengths in tape units.</summary>
internal static class BorderDrafts
{
    internal static readonly Box Plate = new(-150, 0, 150, 200);

    /// <summary>A fill, then its border in another color.</summary>
    internal static Draft Bordered(this Draft draft, Box box, int width, int overlap) =>
        draft.Filled(box).ColorStop().Border(box, width, overlap);

    /// <summary>A fill with a tie at each end.</summary>
    internal static Draft Filled(this Draft draft, Box box) =>
        draft.Reach(new(box.Left, box.Bottom)).Tie(box.Center).Sew(Fill.Of(box)).Tie(box.Center);

    /// <summary>Satin once around a box, its corners mitered.</summary>
    /// <param name="draft">Where it is sewn.</param>
    /// <param name="box">The fill.</param>
    /// <param name="width">Of the satin.</param>
    /// <param name="overlap">How far it lies on the fill; below 0: how far beside it.</param>
    internal static Draft Border(this Draft draft, Box box, int width, int overlap)
    {
        var (inner, outer) = (Corners(Grown(box, -overlap)), Corners(Grown(box, width - overlap)));
        var middle = Way.Between(inner[0], outer[0], 0.5);
        draft.Reach(inner[0]).Tie(middle);
        for (var side = 1; side < inner.Length; side++)
            draft.Sew(new Column(new([inner[side - 1], inner[side]]), new([outer[side - 1], outer[side]])) { UnderlayStitch = 0 });
        return draft.Stitch(inner[^1]).Tie(middle);
    }

    /// <summary>A line of stitches once around a box, so far outside its edge.</summary>
    internal static Draft Outlined(this Draft draft, Box box, int outside = 0)
    {
        var corners = Corners(Grown(box, outside));
        return draft.Reach(corners[0]).Run(25, corners);
    }

    /// <summary>Once around from the middle of the lower edge.</summary>
    private static TapePoint[] Corners(Box box) =>
    [
        new(box.Center.X, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top), new(box.Left, box.Bottom),
        new(box.Center.X, box.Bottom),
    ];

    internal static Box Grown(Box box, int by) => new(box.Left - by, box.Bottom - by, box.Right + by, box.Top + by);

    /// <summary>Behind a color stop the needle moves, else the thread is cut.</summary>
    internal static Draft Reach(this Draft draft, TapePoint to) =>
        (draft.Moves is [] or [.., { Kind: RecordKind.ColorStop }] ? draft.Move(to) : draft.Trim(to)).Stitch(to);

    internal static Job Job(Func<Draft, Draft> sew) => RuleCases.Drafted(sew);

    /// <summary>Threads of the blocks by their colors.</summary>
    internal static Job Colored(this Job job, params string[] colors) => job with
    {
        Ticket = job.Ticket with { Threads = [.. colors.Select((color, i) => new TicketThread { Block = i + 1, Name = color, Color = color })] },
    };
}
