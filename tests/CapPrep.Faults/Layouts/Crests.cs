using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Shields, emblems and words around them.</summary>
internal static class Crests
{
    /// <summary>A bottom line, over it a shield with a border and a sign in it (fact row Q04: text first, then the emblem).</summary>
    internal static Design OverTagline(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(7.0, 8.5));
        var yarns = Kit.Yarns(chance, 4);
        var box = Above(chance, Kit.Foot + face.Height, chance.Between(34.0, 50.0), chance.Between(22.0, 29.0));
        var outline = chance.Of(Shapes.Shield(box), Shapes.Panel(box, 5), Shapes.Oval(box.Center, box.Width, box.Height));
        var (fill, border) = Kit.Bordered("crest", outline, chance.Between(2.6, 3.4), chance.Between(1.25, 1.5));
        return new(
            new Block(yarns[0], Kit.Line(chance, "tagline", Kit.Foot, face, Names.Pairs).Parts()),
            new Block(yarns[1], fill.Vary(chance)),
            new Block(yarns[2], border),
            new Block(yarns[3], Sign(chance, "sign", new(0, box.Center.Y), Math.Min(box.Width, box.Height) * 0.3)))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>A word, and an emblem over it.</summary>
    internal static Design OverWord(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(9.0, 12.0));
        var yarns = Kit.Yarns(chance, 3);
        var center = new Vec(0, Kit.Foot + face.Height + 5 + 12);
        var outline = chance.Of(Shapes.Disk(center, 11), Shapes.Oval(center, 30, 20), Shapes.Panel(Rect.Around(center, 28, 21), 4));
        var (fill, border) = Kit.Bordered("emblem", outline, chance.Between(2.6, 3.2), chance.Between(1.25, 1.5));
        return new(
            new Block(yarns[0], Kit.Line(chance, "word", Kit.Foot, face, chance.Of(Names.Odd, Names.Even)).Parts()),
            new Block(yarns[1], fill.Vary(chance)),
            new Block(yarns[2], border))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>A disk with rings, text between them above and below, a sign in the middle.</summary>
    internal static Design Roundel(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var center = new Vec(0, 38);
        var (fill, border) = Kit.Bordered("disk", Shapes.Disk(center, 22), 2.8, 1.4);
        var face = Kit.FaceOf(chance, chance.Between(6.8, 7.4)) with { Stroke = 1.25, Gap = 1.3 };
        var below = new Word("below", chance.Of("CLUB", "CREW", "TEAM"), face, new(center - new Vec(0, 12.5 + face.Height), -(12.5 + face.Height)))
        {
            MiddleGap = 3.5,
        };
        var above = new Word("above", chance.Of(Names.Odd), face, new(center + new Vec(0, 12.5), 12.5));
        var ring = new SatinColumn(Overlapped(Curve.Circle(center, 10.4)), chance.Between(1.5, 2.0)) { Name = "ring" };
        return new(
            new Block(yarns[0], fill.Vary(chance)),
            new Block(yarns[1], below.Parts()),
            new Block(yarns[2], Sign(chance, "sign", center, 7), ring with { Reach = Reach.Trim }),
            new Block(yarns[1], above.Parts()),
            new Block(yarns[3], border))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>A base, text on it, and a border round everything at the end.</summary>
    internal static Design Patch(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 3);
        var box = new Rect(-38, Kit.Foot + 1.7, 38, Kit.Foot + 1.7 + chance.Between(36.0, 44.0));
        var outline = chance.Of(Shapes.Panel(box, 8), Shapes.Oval(box.Center, box.Width, box.Height));
        var (fill, border) = Kit.Bordered("patch", outline, chance.Between(3.0, 3.6), chance.Between(1.4, 1.6));
        var low = Kit.FaceOf(chance, chance.Between(7.1, 8.0));
        var high = Kit.FaceOf(chance, chance.Between(9.0, 11.0));
        var text = new[]
        {
            Kit.Line(chance, "low", box.Center.Y - low.Height - 2.5, low, Names.Odd, 52),
            Kit.Line(chance, "high", box.Center.Y + 2, high, Names.Odd, 56),
        };
        return new(
            new Block(yarns[0], fill.Vary(chance)),
            new Block(yarns[1], [.. text.SelectMany(word => word.Parts())]),
            new Block(yarns[2], border))
        {
            Habits = Habits.Draw(chance),
        };
    }

    internal static Part Sign(Chance chance, string name, Vec center, double radius)
    {
        var outline = chance.Of(
            Shapes.Star(center, radius, 5, 0.55), Shapes.Diamond(center, radius * 1.7, radius * 1.9),
            Shapes.Regular(center, radius, 6), Shapes.Disk(center, radius * 0.9));
        return new FillArea(Area.Of(outline)) { Name = name }.Vary(chance) with { Stitch = 3.6, Under = Under.Across, UnderDistance = 1.6 };
    }

    internal static Curve Overlapped(Curve closed) => new([.. closed.Points, closed.At(0.6)]);

    private static Rect Above(Chance chance, double top, double width, double height)
    {
        var bottom = top + chance.Between(4.0, 6.0);
        return new(-width / 2, bottom, width / 2, bottom + height);
    }
}
