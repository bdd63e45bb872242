using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Designs that are mostly text.</summary>
internal static class Texts
{
    /// <summary>Two large letters beside the seam, often with an oval round them.</summary>
    internal static Design Monogram(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 2);
        var height = chance.Between(24.0, 32.0);
        var face = new Face { Height = height, Stroke = height * chance.Between(0.14, 0.18), Gap = 5, Under = Under.Zigzag, Pitch = chance.Between(0.38, 0.45) };
        var foot = Kit.Foot + chance.Between(6.0, 8.0);
        var word = new Word("monogram", chance.Of(Names.Monograms), face, new(new(0, foot))) { GapOnFoot = true, MiddleGap = 6 };
        var oval = Shapes.Oval(new(0, foot + (height / 2)), (word.Length * 1.15) + 26, height + (2 * (foot - Kit.Foot - 1.6)));
        var ring = new SatinColumn(Crests.Overlapped(oval), chance.Between(2.2, 3.0)) { Name = "ring", Under = Under.Both };
        Block[] blocks = [new(yarns[0], word.Parts()), new(yarns[1], ring)];
        return new(chance.Is(0.6) ? blocks : blocks[..1]) { Habits = Habits.Draw(chance) };
    }

    /// <summary>A disk, and text on an arc over it.</summary>
    internal static Design Arc(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 3);
        var center = new Vec(0, Kit.Foot + 11.7);
        var (fill, border) = Kit.Bordered("disk", Shapes.Disk(center, 10.4), 2.6, 1.4);
        var face = Kit.FaceOf(chance, chance.Between(8.0, 10.0));
        var radius = chance.Between(22.0, 40.0);
        var word = new Word("arc", chance.Of("HARBOR", "SUMMIT", "TIMBER", "ANCHOR", "FALCON"), face, new(new(0, 41), radius))
        {
            MiddleGap = Kit.MiddleGap(face),
            Order = chance.Of(LineOrder.Outward, LineOrder.OutwardLeftFirst),
        };
        while (!SeamCare.IsClean(word.Parts()))
            word = word with { MiddleGap = word.MiddleGap + 0.5 };
        return new(new Block(yarns[0], fill.Vary(chance)), new Block(yarns[1], border), new Block(yarns[2], word.Parts()))
        {
            Habits = Habits.Draw(chance),
        };
    }

    internal static Design ThreeLines(Chance chance)
    {
        var yarns = Kit.Yarns(chance, chance.Between(1, 3));
        var y = Kit.Foot;
        var blocks = new List<Block>();
        for (var line = 0; line < 3; line++)
        {
            var face = Kit.FaceOf(chance, chance.Between(7.1, 9.5));
            var word = Kit.Line(chance, $"line {line}", y, face, chance.Of(Names.Odd, Names.Even, Names.Pairs));
            y += face.Height + chance.Between(3.5, 5.0);
            if (line < yarns.Count)
                blocks.Add(new(yarns[line], word.Parts()));
            else
                blocks[^1] = blocks[^1] with { Parts = [.. blocks[^1].Parts, .. word.Parts()] };
        }

        return new(blocks) { Habits = Habits.Draw(chance) };
    }

    internal static Design WideLine(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(9.0, 11.5)) with { Serifs = chance.Is(0.3) };
        return new(new Block(chance.Of(Yarn.All), Kit.Line(chance, "line", Kit.Foot, face, Names.Pairs).Parts()))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>Joined lower case that leans, sewn in one go from left to right, a swash under it.</summary>
    internal static Design Script(Chance chance)
    {
        var height = chance.Between(17.0, 20.0);
        var face = new Face { Height = height, Stroke = height * 0.11, Lean = chance.Between(10.0, 14.0), Gap = 0.4, Wide = 0.9, Pitch = chance.Between(0.38, 0.44) };
        var word = new Word("script", chance.Of("summer", "common", "union", "moon", "amour"), face, new(new(0, 22))) { Order = LineOrder.LeftToRight };
        for (var step = 0; step < 40 && !SeamCare.IsClean(word.Parts()); step++)
            word = word with { Offset = (step % 2 == 0 ? 0.3 : -0.3) * (step + 1) };
        var parts = Joined(word);
        var width = word.Length;
        var swash = new SatinColumn(Curve.Smooth(new(word.Offset - (width * 0.42), 16.2), new(word.Offset - (width * 0.1), 15), new(word.Offset + (width * 0.2), 16), new(word.Offset + (width * 0.46), 17.6)), 2)
        {
            Name = "swash",
            Shape = static share => Math.Min(1, 0.5 + (3 * Math.Min(share, 1 - share))),
            Reach = Reach.Trim,
        };
        return new(new Block(chance.Of(Yarn.All), [.. parts, swash])) { Habits = Habits.Draw(chance) };
    }

    /// <summary>Letters of single lines, 4 mm or so, under an emblem.</summary>
    internal static Design SingleLine(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 3);
        var face = new Face { Height = chance.Between(3.9, 4.8), As = SewnAs.Running, Gap = 1.2 };
        var word = Kit.Line(chance, "small", Kit.Foot, face, Names.Pairs);
        var center = new Vec(0, 33);
        var (fill, border) = Kit.Bordered("emblem", chance.Of(Shapes.Disk(center, 12), Shapes.Oval(center, 34, 22)), 2.8, 1.4);
        return new(new Block(yarns[0], word.Parts()), new Block(yarns[1], fill.Vary(chance)), new Block(yarns[2], border))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>Letters with the strokes between them, in one strand.</summary>
    internal static IReadOnlyList<Part> Joined(Word word)
    {
        var letters = word.Parts().Cast<Letter>().ToList();
        var parts = new List<Part>();
        for (var k = 0; k < letters.Count; k++)
        {
            parts.Add(letters[k] with { Reach = Reach.Hidden, Group = word.Name });
            if (k + 1 == letters.Count)
                continue;
            var (from, to) = (letters[k].Dots()[^1].At, letters[k + 1].Dots()[0].At);
            var path = Curve.Smooth(from, Vec.Toward(from, to, 0.5) - new Vec(0, 0.25), to);
            parts.Add(new SatinColumn(path, word.Face.Stroke * 0.8) { Name = $"{letters[k].Name} join", Under = Under.None, Reach = Reach.Hidden, Line = word.Name, Glyph = letters[k].Glyph, Group = word.Name });
        }

        return parts;
    }
}
