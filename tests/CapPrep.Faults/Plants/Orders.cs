using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Good;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Good designs sewn in the wrong order.</summary>
internal static class Orders
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("order.bottom-up", TopDown),
        new("order.center-out", LeftToRight),
        new("order.text-line", FromEndToEnd),
        new("order.tagline-first", TaglineLast),
        new("order.across-seam", AcrossSeam),
        new("order.rows-downward", RowsDownward),
        new("order.ring", Ring),
        new("order.back-again", BackAgain),
        new("border.late", LateBorder),
        new("border.thin", ThinBorder) { Near = Thin },
        new("border.overlap", chance => Overlap(chance, -Limits.Beyond(chance, Limits.BorderOverlap, 0.7))) { Near = Overlap },
    ];

    private static Pair TopDown(Chance chance)
    {
        var good = chance.Is(0.5) ? Texts.ThreeLines(chance) : Grids.ThreeByThree(chance);
        var parts = good.Parts.ToList();
        var rows = parts.GroupBy(part => part.Name.Split('.')[0].Split(' ')[1]).Select(row => row.ToList()).Reverse().ToList();
        Block[] blocks = good.Blocks.Count == 3
            ? [.. good.Blocks.Reverse()]
            : [.. rows.Select((row, k) => new Block(k < good.Blocks.Count ? good.Blocks[good.Blocks.Count - 1 - k].Yarn : good.Blocks[0].Yarn, row))];
        if (good.Blocks.Count < 3)
            blocks = [.. blocks.GroupBy(block => block.Yarn).Select(yarn => new Block(yarn.Key, [.. yarn.SelectMany(block => block.Parts)]))];
        return new(good, good with { Blocks = blocks })
        {
            Where = ["line", "sign"],
            Companions = ["order.tagline-first", "order.back-again", "order.center-out"],
        };
    }

    private static Pair LeftToRight(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        var step = chance.Between(15.0, 19.0);
        var signs = Enumerable.Range(-2, 5).ToDictionary(k => k, k => Crests.Sign(chance, $"sign {k}", new(k * step, 24), chance.Between(5.8, 7.0)) with { Reach = Reach.Trim });
        Design Draw(params IReadOnlyList<int> order) => new(new Block(yarn, [.. order.Select(k => signs[k])]));
        var habits = Habits.Draw(chance);
        return new(Draw(0, 1, 2, -1, -2) with { Habits = habits }, Draw(chance.Is(0.5) ? [-2, -1, 0, 1, 2] : [2, 1, 0, -1, -2]) with { Habits = habits })
        {
            Where = ["sign"],
        };
    }

    private static Pair FromEndToEnd(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(8.5, 11.0));
        var word = Kit.Line(chance, "line", Kit.Foot, face, Names.Pairs);
        var yarn = chance.Of(Yarn.All);
        var habits = Habits.Draw(chance);
        Design Draw(Word line) => new(new Block(yarn, line.Parts())) { Habits = habits };
        return new(Draw(word), Draw(word with { Order = chance.Of(LineOrder.LeftToRight, LineOrder.RightToLeft) })) { Where = ["line"] };
    }

    private static Pair TaglineLast(Chance chance)
    {
        var good = Crests.OverTagline(chance);
        return new(good, good with { Blocks = [.. good.Blocks.Skip(1), good.Blocks[0]] })
        {
            Where = ["tagline"],
            Companions = ["order.bottom-up"],
        };
    }

    /// <summary>Steep rows, not along the seam, that carry the sewing from one side to the other.</summary>
    private static Pair AcrossSeam(Chance chance)
    {
        var (wide, tall) = (chance.Between(52.0, 70.0), chance.Between(9.0, 13.0));
        var good = new Design(new Block(chance.Of(Yarn.All), new FillArea(Area.Rectangle(new(-wide / 2, 14, wide / 2, 14 + tall))) { Name = "bar" }.Vary(chance)))
        {
            Habits = Habits.Draw(chance),
        };
        return new(good, good.With("bar", part => ((FillArea)part) with { Degrees = chance.Between(58.0, 66.0) * chance.Of(-1, 1) })) { Where = ["bar"] };
    }

    private static Pair RowsDownward(Chance chance)
    {
        var good = Plates.Plate(chance, new(-22, 14, 22, 14 + chance.Between(22.0, 32.0)));
        return new(good, good.With("plate fill", part => ((FillArea)part) with { Down = true })) { Where = ["plate"], AtLeast = "note" };
    }

    private static Pair Ring(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 2);
        var outline = Shapes.Oval(new(0, 36), chance.Between(70.0, 90.0), 42);
        var word = Kit.Line(chance, "word", 31, Kit.FaceOf(chance, 9.5), Names.Odd, 60);
        var ring = new SatinColumn(Crests.Overlapped(outline), 2) { Name = "ring", Under = Under.Both };
        var good = new Design(new Block(yarns[0], word.Parts())) { Habits = Habits.Draw(chance) };
        return new(good, good with { Blocks = [.. good.Blocks, new(yarns[1], ring)] }) { Where = ["ring"], AtLeast = "note" };
    }

    /// <summary>The first thread comes back for a sign that could have been sewn before.</summary>
    private static Pair BackAgain(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 2);
        var (low, right, left) = (OnOrder.Disk("low", new(0, 22), 7), OnOrder.Disk("right", new(20, 22), 6), OnOrder.Disk("left", new(-20, 22), 6));
        var high = OnOrder.Disk("high", new(0, 45), 7);
        var good = new Design(new Block(yarns[0], low, right, left), new Block(yarns[1], high)) { Habits = Habits.Draw(chance) };
        return new(good, good with { Blocks = [new(yarns[0], low, right), new(yarns[1], high), new(yarns[0], left)] })
        {
            Where = ["left", "low", "right", "high"],
            AtLeast = "note",
            Companions = ["order.bottom-up"],
        };
    }

    private static Pair LateBorder(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var width = Limits.BorderLateWidth * (1 - Limits.Beyond(chance, Limits.BorderLateWidth, 0.15));
        var (fill, border) = Kit.Bordered("low", Shapes.Oval(new(0, 21.5), 20, 13), width, 1.0);
        var wide = Kit.Bordered("low", Shapes.Oval(new(0, 21.5), 20, 13), 3, 1.5).Border;
        var signs = new[] { 0, 1, -1, 2, -2 }.Select(k => Crests.Sign(chance, $"sign {k}", new(k * 17, 45), 7.6) with { Reach = Reach.Trim }).ToList();
        var habits = Habits.Draw(chance);
        Design Draw(params IReadOnlyList<Block> blocks) => new(blocks) { Habits = habits };
        var (a, b) = (new Block(yarns[0], fill with { Degrees = 5 }), new Block(yarns[1], [.. signs]));
        return new(Draw(a, new(yarns[2], wide), b), Draw(a, b, new(yarns[2], border)))
        {
            Where = ["low"],
            Companions = ["order.bottom-up", "border.overlap", "order.tagline-first"],
        };
    }

    private static Pair ThinBorder(Chance chance)
    {
        if (chance.Is(0.5))
            return Thin(chance, -Limits.Beyond(chance, Limits.BorderThin, 0.25));
        var pair = Thin(chance, -0.2);
        return pair with { Bad = pair.Bad.With("plate border", part => new RunningLine(((SatinColumn)part).Path) { Name = part.Name, Passes = 2 }) };
    }

    private static Pair Thin(Chance chance, double u)
    {
        var good = Plates.Plate(chance, new(-20, 14, 20, 40), chance.Is(0.5));
        var outline = chance.Is(0.5) ? Shapes.Oval(new(0, 27), 36, 22) : Shapes.Panel(new(-18, 16, 18, 38), 5);
        var (fill, border) = Kit.Bordered("plate", outline, Limits.BorderThin * (1 + u), 0.95);
        return new(good, good.With("plate fill", part => ((FillArea)part) with { Shape = fill.Shape }).With("plate border", _ => border with { Under = Under.Center }))
        {
            Where = ["plate"],
            Companions = ["border.late", "border.overlap"],
            Beyond = -u,
        };
    }

    private static Pair Overlap(Chance chance, double u)
    {
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double overlap)
        {
            var own = new Chance("overlap", seed);
            var (fill, border) = Kit.Bordered("plate", Shapes.Oval(new(0, 28), own.Between(34.0, 44.0), 26), 3, overlap);
            return new(new Block(Yarn.Gold, fill.Vary(own)), new Block(Yarn.Navy, border)) { Habits = Habits.Draw(own) };
        }

        return new(Draw(1.45), Draw(Limits.BorderOverlap * (1 + u))) { Where = ["plate"], Companions = ["border.late"], Beyond = -u };
    }
}
