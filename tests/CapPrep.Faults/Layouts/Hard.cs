using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Good designs that give a checker trouble.</summary>
internal static class Hard
{
    /// <summary>A ribbon lies on the foot of a shield, so the shield comes first although it stands higher; text on the ribbon.</summary>
    internal static Design Ribbon(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 5);
        var face = Kit.FaceOf(chance, chance.Between(7.1, 7.5));
        var word = Kit.Line(chance, "tagline", Kit.Foot + 3.2, face, Names.Odd, 60);
        var ribbon = Shapes.Panel(new(-(word.Length / 2) - 4, Kit.Foot + 1.7, (word.Length / 2) + 4, Kit.Foot + face.Height + 4.8), 2.5);
        var shield = Shapes.Shield(new(-19, Kit.Foot + 5, 19, Kit.Foot + chance.Between(32.0, 40.0)));
        var (high, edge) = Kit.Bordered("shield", shield, 2.8, 1.4);
        var (low, rim) = Kit.Bordered("ribbon", ribbon, 2.6, 1.4);
        return new(
            new Block(yarns[0], high.Vary(chance)),
            new Block(yarns[1], edge),
            new Block(yarns[2], low.Vary(chance)),
            new Block(yarns[3], rim),
            new Block(yarns[4], word.Parts()))
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>Up to twelve threads and ninety short bars, row by row upward, in every row from the seam outward.</summary>
    internal static Design Mosaic(Chance chance)
    {
        var rows = chance.Between(5, 12);
        var reach = chance.Between(2, 3);
        var yarns = Kit.Yarns(chance, rows);
        var columns = new[] { 0 }.Concat(Enumerable.Range(1, reach)).Concat(Enumerable.Range(1, reach).Select(k => -k)).ToList();
        SatinColumn Bar(int row, int column) => new(
            new(new((column * 9) - 3, 15 + (row * 3.9)), new((column * 9) + 3, 15 + (row * 3.9))), 2.4)
        {
            Name = $"bar {row} {column}",
            Under = Under.Center,
            Reach = Reach.Trim,
        };
        return new([.. yarns.Select((yarn, row) => new Block(yarn, [.. columns.Select(column => Bar(row, column))]))])
        {
            Habits = Habits.Draw(chance),
        };
    }

    /// <summary>Rings in one another, each in its own thread, inner ones first.</summary>
    internal static Design Rings(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var center = new Vec(0, 36);
        var rings = Enumerable.Range(0, 3).Select(k => new Block(
            yarns[k + 1],
            new SatinColumn(Crests.Overlapped(Curve.Circle(center, 8 + (k * 6.5))), chance.Between(2.2, 3.2)) { Name = $"ring {k}", Under = Under.Both }));
        return new([new Block(yarns[0], Good.OnOrder.Disk("middle", center, 4.5)), .. rings]) { Habits = Habits.Draw(chance) };
    }

    /// <summary>Everything a tenth inside its limit, or as near as measuring can tell.</summary>
    internal static Design AtTheLimits(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 4);
        var face = new Face { Height = Limits.LetterWarn * chance.Between(1.07, 1.1), Stroke = Limits.ColumnWarn * 1.21, Gap = Limits.LetterGap + 0.25 };
        var foot = Limits.BrimWarn * 1.06;
        var word = Kit.Line(chance, "small", foot, face, Names.OpenPairs);
        var top = foot + (Limits.HeightWarn * 0.93);
        var panel = Shapes.Panel(new(-22, foot + 13, 22, top - 1.6), 6);
        var (fill, border) = Kit.Bordered("panel", panel, 2.6, Limits.BorderOverlap + 0.25);
        var bar = new SatinColumn(new(new(-24, foot + 8.6), new(24, foot + 8.6)), 3.0) { Name = "bar", Under = Under.Both, Pitch = Limits.PitchHigh * 0.92 };
        return new(
            new Block(yarns[0], word.Parts()),
            new Block(yarns[3], bar),
            new Block(yarns[1], fill.Vary(chance) with { Distance = Limits.PitchLow * 1.08, ZigzagRows = false }),
            new Block(yarns[2], border))
        {
            Habits = Habits.Draw(chance),
        };
    }
}
