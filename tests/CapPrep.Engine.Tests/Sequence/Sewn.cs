using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Sequence;

/// <summary>Designs of filled boxes in a chosen order; the seam is at x = 0, sizes in tape units.</summary>
internal static class Sewn
{
    internal static readonly Box Base = new(-300, 0, 300, 100);
    internal static readonly Box Middle = new(-200, 130, 200, 230);
    internal static readonly Box Top = new(-100, 260, 100, 360);
    internal static readonly Box Left = new(-300, 130, -140, 290);
    internal static readonly Box Center = new(-80, 130, 80, 290);
    internal static readonly Box Right = new(140, 130, 300, 290);

    /// <summary>One color, the thread cut between boxes.</summary>
    internal static Tape Trimmed(params Box[] boxes) => Draft((draft, to) => draft.Trim(to), boxes).ToTape("TEST");

    /// <summary>A color for every box.</summary>
    internal static Tape Colored(params Box[] boxes) => Draft((draft, to) => draft.ColorStop().Move(to), boxes).ToTape("TEST");

    /// <summary>A color block for every list, the thread cut between its boxes; threads by name, one for every block.</summary>
    internal static Job InThreads(params (string Thread, Box[] Boxes)[] blocks)
    {
        var draft = new Draft();
        foreach (var (_, boxes) in blocks)
        {
            if (boxes != blocks[0].Boxes)
                draft.ColorStop().Move(new(boxes[0].Left, boxes[0].Bottom));
            BoxAt(draft, boxes[0]).Boxes(boxes[1..]);
        }

        return Job.Clean with
        {
            Tape = draft.ToTape("TEST"),
            Ticket = Job.Clean.Ticket with { Threads = [.. blocks.Select((block, at) => new TicketThread { Block = at + 1, Name = block.Thread })] },
        };
    }

    internal static Job Allowing(this Job job, TicketSewOrder order) => job with { Ticket = job.Ticket with { SewOrder = order } };

    /// <summary>A line of letters, 64 mm wide and 8 mm high, with columns of 3 mm, at the lower edge; then or before it a box.</summary>
    internal static Tape LineAndBox(bool lineFirst)
    {
        var draft = new Draft();
        if (!lineFirst)
            BoxAt(draft, new(-200, 150, 200, 350));
        for (var letter = 0; letter < 11; letter++)
        {
            var foot = new TapePoint(-320 + (60 * letter), 0);
            if (letter == 0 && lineFirst)
                draft.Move(foot);
            else
                draft.Trim(foot);
            draft.Stitch(foot).Tie(foot + new TapePoint(15, 40)).Sew(Column.Upright(foot, 30, 80)).Tie(foot + new TapePoint(15, 40));
        }

        if (lineFirst)
        {
            draft.Trim(new(-200, 150));
            BoxAt(draft, new(-200, 150, 200, 350));
        }

        return draft.ToTape("TEST");
    }

    /// <summary>Fills, the thread cut before each.</summary>
    internal static Draft Boxes(this Draft draft, params Box[] boxes)
    {
        foreach (var box in boxes)
            BoxAt(draft.Trim(new(box.Left, box.Bottom)), box);
        return draft;
    }

    private static Draft Draft(Action<Draft, TapePoint> reach, Box[] boxes)
    {
        var draft = new Draft();
        for (var i = 0; i < boxes.Length; i++)
        {
            if (i > 0)
                reach(draft, new(boxes[i].Left, boxes[i].Bottom));
            BoxAt(draft, boxes[i]);
        }

        return draft;
    }

    private static Draft BoxAt(Draft draft, Box box) =>
        draft.Stitch(new(box.Left, box.Bottom)).Tie(box.Center).Sew(Fill.Of(box)).Tie(box.Center);
}
