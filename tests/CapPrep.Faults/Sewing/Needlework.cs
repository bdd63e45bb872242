using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Tapes;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>Sews a design: needle points on the tape's grid, the file, and the truth about them.</summary>
internal static class Needlework
{
    internal static CorpusTape Sew(Design design, string family, int number, PlantedFault? fault = null)
    {
        var dots = Ties.In(Strands.Of(design), design.Habits);
        var grid = OnGrid(dots, design.Habits, new Chance("jitter " + family, number));
        var needles = Needles(design, dots, grid, out var origin);
        var ticket = TicketOf(design, needles, origin);
        return new()
        {
            Name = $"{family} {number}",
            Family = family,
            Bytes = TapeFile.Of(needles, design.Habits, design.File),
            Ticket = ticket,
            Truth = TruthOf(design, needles, origin, fault),
            Needles = needles,
            Habits = design.Habits,
            File = design.File,
        };
    }

    /// <summary>Tape units, in cap coordinates still.</summary>
    private static List<(int X, int Y)> OnGrid(List<PartDot> dots, Habits habits, Chance chance) =>
    [
        .. dots.Select(dot =>
        {
            var isLoose = dot.Dot.Purpose != Purpose.Tie && chance.Is(habits.JitterShare);
            var (dx, dy) = isLoose ? (chance.Between(-1, 1), chance.Between(-1, 1)) : (0, 0);
            return ((int)Math.Round(dot.Dot.At.X * 10) + dx, (int)Math.Round(dot.Dot.At.Y * 10) + dy);
        }),
    ];

    private static List<Needle> Needles(Design design, List<PartDot> dots, List<(int X, int Y)> grid, out (int X, int Y) origin)
    {
        var (left, right) = (grid.Min(p => p.X), grid.Max(p => p.X));
        var (bottom, top) = (grid.Min(p => p.Y), grid.Max(p => p.Y));
        origin = (design.SeatsByOrigin ? 0 : (left + right) / 2, design.Habits.StartsAtBottom ? bottom : (bottom + top) / 2);
        var needles = new List<Needle>(dots.Count);
        var parts = design.Parts.ToList();
        for (var k = 0; k < dots.Count; k++)
        {
            var (x, y) = (grid[k].X - origin.X, grid[k].Y - origin.Y);
            var (dot, part, block) = (dots[k].Dot, dots[k].Part, dots[k].Block);
            var isSame = needles.Count > 0 && needles[^1].X == x && needles[^1].Y == y && dot.Joint == Joint.Thread;
            if (!isSame)
                AddSplit(needles, new(x, y, dot.Joint, dot.As, dot.Purpose, part, parts[part].Glyph, block));
        }

        return needles;
    }

    /// <summary>A stitch farther than a record reaches has needle points inside.</summary>
    private static void AddSplit(List<Needle> needles, Needle to)
    {
        if (needles.Count > 0 && to.Joint == Joint.Thread)
        {
            var from = needles[^1];
            var pieces = (Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) + Record.Longest - 1) / Record.Longest;
            for (var k = 1; k < pieces; k++)
                needles.Add(to with { X = from.X + ((to.X - from.X) * k / pieces), Y = from.Y + ((to.Y - from.Y) * k / pieces) });
        }

        needles.Add(to);
    }

    private static TicketNote TicketOf(Design design, List<Needle> needles, (int X, int Y) origin)
    {
        if (design.SeatsByOrigin)
            design = design.WithTicket(note => note with { CenterBy = "origin" });
        var isCentered = Math.Abs(needles.Min(n => n.X) + needles.Max(n => n.X) + (2 * origin.X)) <= 1;
        var ticket = design.Ticket with
        {
            TrimJumps = design.Habits.TrimJumps,
            MachineTies = design.Habits.MachineTies,
            Threads = design.Ticket.Threads.Count > 0 ? design.Ticket.Threads : ThreadsOf(design),
            BaseAboveBrimMm = (needles.Min(n => n.Y) + origin.Y) / 10.0,
        };
        if (ticket.CenterBy != "box" || isCentered || design.SeatsByBox)
            return ticket;
        return ticket with { OffsetRightMm = ((needles.Min(n => n.X) + needles.Max(n => n.X)) / 20.0) + (origin.X / 10.0) };
    }

    private static IReadOnlyList<ThreadNote> ThreadsOf(Design design) =>
    [
        .. design.Blocks.Select((block, k) => new ThreadNote(k + 1, block.Yarn.Name, block.Yarn.Color)
        {
            WeightWt = block.Yarn.WeightWt,
            Kind = block.Yarn.Kind,
            Foam = block.Yarn.Foam,
            Action = block.Action,
        }),
    ];

    private static Truth TruthOf(Design design, List<Needle> needles, (int X, int Y) origin, PlantedFault? fault)
    {
        Vec Cap(Needle needle) => new((needle.X + origin.X) / 10.0, (needle.Y + origin.Y) / 10.0);
        var parts = design.Parts.ToList();
        return new()
        {
            Spans = Spans(needles, parts),
            Lines = [.. needles.Where(n => n.Glyph >= 0 && n.Purpose == Purpose.Top)
                .GroupBy(n => parts[n.Part].Line!)
                .Select(line => new TruthLine(line.Key, [.. line.GroupBy(n => n.Glyph).OrderBy(g => g.Key).Select(g => Rect.Of(g.Select(Cap)))]))],
            Parts = parts.Count,
            Box = Rect.Of(needles.Select(Cap)),
            Fault = fault,
        };
    }

    private static IReadOnlyList<TruthSpan> Spans(List<Needle> needles, List<Part> parts)
    {
        var spans = new List<TruthSpan>();
        var strand = 0;
        for (var k = 0; k < needles.Count; k++)
        {
            var (n, piece) = (needles[k], parts[needles[k].Part]);
            strand += Ties.IsCut(n.Joint) ? 1 : 0;
            var isNew = k == 0 || needles[k - 1] is var b
                && (b.Part != n.Part || b.As != n.As || b.Purpose != n.Purpose || b.Block != n.Block || Ties.IsCut(n.Joint));
            if (isNew)
                spans.Add(new(k, k, $"{piece.Group ?? piece.Name} {strand}", n.Block, n.As, n.Purpose, piece.Line, n.Glyph));
            else
                spans[^1] = spans[^1] with { Last = k };
        }

        return spans;
    }
}
