using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Emblems in rows, blends, and work on the sides and the back.</summary>
internal static class Grids
{
    /// <summary>Three rows of three signs, bottom row first, in each row the middle first.</summary>
    internal static Design ThreeByThree(Chance chance)
    {
        var yarns = Kit.Yarns(chance, chance.Of(1, 3));
        var (stepX, stepY) = (chance.Between(16.0, 24.0), chance.Between(15.0, 17.0));
        var rows = Enumerable.Range(0, 3).Select(row => new[] { 0, 1, -1 }.Select(column =>
            Crests.Sign(chance, $"sign {row} {column}", new(column * stepX, 19.5 + (row * stepY)), chance.Between(5.5, 6.5)) with { Reach = Reach.Trim }));
        Block[] blocks = yarns.Count == 1
            ? [new(yarns[0], [.. rows.SelectMany(row => row)])]
            : [.. rows.Select((row, k) => new Block(yarns[k], [.. row]))];
        return new(blocks) { Habits = Habits.Draw(chance) };
    }

    /// <summary>Two open fills that shade into each other, and a light on top.</summary>
    internal static Design Blend(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 3);
        var outline = chance.Of(Shapes.Oval(new(0, 31), 54, 34), Shapes.Panel(new(-26, 14, 26, 48), 7), Shapes.Disk(new(0, 31), 17));
        var degrees = Kit.Across(chance, Rect.Of(outline.Points));
        var distance = chance.Between(0.75, 0.85);
        var low = new FillArea(Area.Of(outline)) { Name = "low", Degrees = degrees, Distance = distance, Under = Under.Across };
        var high = new FillArea(Area.Of(outline).Mapped(at => at + new Vec(0, distance / 2))) { Name = "high", Degrees = degrees, Distance = distance, Under = Under.None };
        var light = new FillArea(Area.Of(Shapes.Oval(new(7, 38), 14, 7))) { Name = "light", Degrees = degrees, Under = Under.Across };
        return new(new Block(yarns[0], low), new Block(yarns[1], high), new Block(yarns[2], light)) { Habits = Habits.Draw(chance) };
    }

    /// <summary>Text over the opening, on a flat clamp; order matters little there (fact row Q11).</summary>
    internal static Design BackArch(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(6.8, 7.8)) with { Gap = 1.1, Stroke = 1.3 };
        var word = new Word("arch", chance.Of(Names.Even.Concat(Names.Odd).Where(name => name.Length is 5 or 6).ToList()), face, new(new(0, 20), 42)) { Order = LineOrder.LeftToRight };
        return new(new Block(chance.Of(Yarn.All), word.Parts()))
        {
            Habits = Habits.Draw(chance),
            Ticket = new() { Location = "back", CapFrame = "flat-clamp" },
        };
    }

    /// <summary>A small emblem and a word on the side of the cap.</summary>
    internal static Design Side(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 3);
        var face = Kit.FaceOf(chance, chance.Between(6.8, 8.0));
        var word = new Word("word", chance.Of(Names.Even), face, new(new(0, Kit.Foot)));
        var center = new Vec(0, Kit.Foot + face.Height + 3.5 + 7.6);
        var (fill, border) = Kit.Bordered("emblem", Shapes.Disk(center, 7), 2.6, 1.4);
        return new(new Block(yarns[0], word.Parts()), new Block(yarns[1], fill.Vary(chance)), new Block(yarns[2], border))
        {
            Habits = Habits.Draw(chance),
            Ticket = new() { Location = chance.Of("left", "right"), CapFrame = chance.Of("flat-clamp", "wide-270") },
        };
    }
}
