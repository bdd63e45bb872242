using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>A needle point with the part it belongs to.</summary>
internal readonly record struct PartDot(Dot Dot, int Part, int Block);

/// <summary>All parts of a design in one sequence, with the ways from part to part.</summary>
internal static class Strands
{
    internal static List<PartDot> Of(Design design)
    {
        var dots = new List<PartDot>();
        var part = 0;
        for (var block = 0; block < design.Blocks.Count; block++)
        {
            foreach (var piece in design.Blocks[block].Parts)
            {
                var isFirst = piece == design.Blocks[block].Parts[0];
                Add(dots, piece, part++, block + 1, isFirst && block > 0, design.Habits);
            }
        }

        return dots;
    }

    private static void Add(List<PartDot> dots, Part piece, int part, int block, bool afterStop, Habits habits)
    {
        var own = piece.Dots();
        if (own.Count == 0)
            throw new InvalidOperationException($"Part '{piece.Name}' has no stitch.");
        if (dots.Count > 0 && !afterStop && piece.Reach == Reach.Hidden)
            AddWay(dots, own[0], part, block);
        var joint = dots.Count == 0 ? Joint.Thread : afterStop ? Joint.Stop : JointTo(dots[^1].Dot, own[0], piece.Reach, habits);
        dots.Add(new(own[0] with { Joint = joint }, part, block));
        dots.AddRange(own.Skip(1).Select(dot => new PartDot(dot, part, block)));
    }

    private static void AddWay(List<PartDot> dots, Dot to, int part, int block)
    {
        var from = dots[^1].Dot.At;
        if (Vec.Distance(from, to.At) < 2.5)
            return;
        foreach (var at in new Curve(from, to.At).Steps(2.5).Skip(1).SkipLast(1))
            dots.Add(new(new(at, to.As, Purpose.Travel), part, block));
    }

    private static Joint JointTo(Dot from, Dot to, Reach reach, Habits habits)
    {
        var far = Vec.Distance(from.At, to.At);
        return reach switch
        {
            Reach.Hidden => Joint.Thread,
            Reach.Loose => habits.TrimJumps > 1 && far < 12 ? Joint.Float : Joint.Thread,
            Reach.Short when far <= habits.WalkUpTo => habits.Floats && far > 0.5 ? Joint.Float : Joint.Thread,
            _ => Joint.Trim,
        };
    }
}
