using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Plants;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Good;

/// <summary>Orders of sewing that only look wrong.</summary>
internal static class OnOrder
{
    internal static Pair Banner(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var face = Kit.FaceOf(chance, chance.Between(6.9, 7.4));
        var word = Kit.Line(chance, "tagline", Kit.Foot + 3, face, Names.Pairs);
        var banner = new FillArea(Area.Of(Shapes.Panel(new(-word.Length * 0.58, Kit.Foot, word.Length * 0.58, Kit.Foot + face.Height + 6), 3))) { Name = "banner" }.Vary(chance);
        var (fill, border) = Kit.Bordered("emblem", Shapes.Disk(new(0, 42), 12), 2.8, 1.4);
        Block[] blocks =
        [
            new(yarns[0], banner), new(yarns[1], word.Parts()), new(yarns[2], fill.Vary(chance)), new(yarns[3], border),
        ];
        var good = new Design(blocks) { Habits = Habits.Draw(chance) };
        return new(good, good with { Blocks = [blocks[2], blocks[3], blocks[0], blocks[1]] })
        {
            Where = ["tagline"],
            Companions = ["order.bottom-up"],
        };
    }

    internal static Pair Tree(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var tree = new RunningLine(new(
            new(0, 14), new(-24, 18), new(0, 20), new(24, 18), new(0, 21), new(-26, 32), new(0, 33), new(26, 32),
            new(0, 34), new(-22, 47), new(0, 51), new(22, 47), new(0, 40), new(0, 15)))
        { Name = "tree", Stitch = 3 };
        FillArea Tile(int row, int column, double degrees) => new(Area.Rectangle(new(
            (column * 21) - 10.7, 13.8 + (row * 12.6), (column * 21) + 10.7, 26 + (row * 12.6))))
        {
            Name = $"row {row} {column}",
            Degrees = degrees,
            Reach = Reach.Trim,
        };
        var rows = Enumerable.Range(0, 3)
            .Select(row => new Block(yarns[row + 1], Tile(row, 0, 0), Tile(row, 1, 6), Tile(row, -1, -6)))
            .ToList();
        var good = new Design([new Block(yarns[0], tree), .. rows]) { Habits = Habits.Draw(chance) };
        return new(good, good with { Blocks = [good.Blocks[0], .. rows.AsEnumerable().Reverse()] })
        {
            Where = ["row"],
            Companions = ["order.tagline-first", "order.center-out"],
        };
    }

    // Some of the design, but not half of it, comes between a fill and its border: late, and no more than a note (house).
    private const string LessThanHalf = "note";

    /// <summary>All fills, then all black borders; wide enough and deep enough on the fills to allow for shift.</summary>
    internal static Pair BlackBorders(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4).Where(yarn => yarn != Yarn.Black).Take(3).ToList();
        Design Draw(double overlap)
        {
            var shapes = Enumerable.Range(0, 3).Select(k => Kit.Bordered($"shape {k}", Shapes.Disk(new((k - 1) * 25.0, 26), 9.5), 2.5, overlap)).ToList();
            int[] outward = [1, 2, 0];
            return new(
                new Block(yarns[0], shapes[1].Fill),
                new Block(yarns[1], shapes[2].Fill),
                new Block(yarns[2], shapes[0].Fill),
                new Block(Yarn.Black, [.. outward.Select(k => shapes[k].Border with { Reach = Reach.Trim })]));
        }

        var habits = Habits.Draw(chance);
        return new(Draw(1.2 + chance.Between(0.05, 0.15)) with { Habits = habits }, Draw(0.3) with { Habits = habits })
        {
            Where = ["shape"],
            Companions = ["border.overlap"],
            AtLeast = LessThanHalf,
        };
    }

    /// <summary>Five shapes, then their narrow borders in a color that is nearly theirs: no gap would show.</summary>
    internal static Pair ToneOnTone(Chance chance)
    {
        var yarn = Kit.Yarns(chance, 5).First(drawn => drawn != Yarn.White && drawn != Yarn.Silver && drawn != Yarn.Sand && drawn != Yarn.Rose);
        var shapes = new[] { 0, 1, 2, -1, -2 }
            .Select(k => Kit.Bordered($"shape {k}", Shapes.Disk(new(k * 18, 24), 7), 1.8, 1.1))
            .ToList();
        var fills = new Block(yarn, [.. shapes.Select(shape => shape.Fill with { Degrees = 4, Reach = Reach.Trim })]);
        Design Draw(Yarn last) => new(fills, new Block(last, [.. shapes.Select(shape => shape.Border with { Reach = Reach.Trim })]));
        var habits = Habits.Draw(chance);
        return new(Draw(new("Tone", Near(yarn.Color))) with { Habits = habits }, Draw(Yarn.White) with { Habits = habits })
        {
            Where = ["shape"],
            Companions = ["border.thin", "border.overlap"],
            AtLeast = LessThanHalf,
        };
    }

    /// <summary>A color that hardly anybody tells from another.</summary>
    internal static string Near(string color) =>
        "#" + string.Concat(Enumerable.Range(0, 3).Select(k => Math.Clamp(Convert.ToInt32(color.Substring(1 + (2 * k), 2), 16) + 7, 0, 255).ToString("X2")));

    /// <summary>On one front panel the seam side comes first (fact row Q10); here the seam lies at the viewer's left.</summary>
    internal static Pair LeftPanel(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        var signs = Enumerable.Range(0, 3).Select(k => Crests.Sign(chance, $"sign {k}", new(-20 + (k * 20), 24), 7.6) with { Reach = Reach.Trim }).ToList();
        var good = new Design(new Block(yarn, [.. signs])) { Habits = Habits.Draw(chance), Ticket = new() { Location = "frontLeft" } };
        return new(good, good with { Blocks = [new(yarn, [.. signs.AsEnumerable().Reverse()])] }) { Where = ["sign"] };
    }

    internal static FillArea Disk(string name, Vec center, double radius) =>
        new(Area.Of(Shapes.Disk(center, radius))) { Name = name, Degrees = 4, Reach = Reach.Trim };
}
