using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Plants;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Good;

/// <summary>Work over the center seam that only looks wrong.</summary>
internal static class OnSeam
{
    internal static Pair TwoHalves(Chance chance)
    {
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance));
        var (reach, height) = (chance.Between(24.0, 34.0), chance.Between(20.0, 28.0));
        Design Draw(double overlap) => new(new Block(yarn, Half("right", 1, overlap), Half("left", -1, overlap) with { Reach = Reach.Trim })) { Habits = habits };
        FillArea Half(string name, int side, double overlap) => new(Area.Rectangle(side > 0
            ? new(-overlap / 2, 14, reach, 14 + height)
            : new(-reach, 14, overlap / 2, 14 + height)))
        {
            Name = $"half {name}",
            Degrees = 6 * side,
            Under = Under.Mesh,
        };

        return new(Draw(1.5), Draw(0.3)) { Place = new(-3, 14, 3, 14 + height), Companions = ["seam.no-underlay"] };
    }

    internal static Pair StemOnFill(Chance chance)
    {
        var (yarns, habits) = (Kit.Yarns(chance, 2), Habits.Draw(chance));
        var face = new Face { Height = chance.Between(11.0, 14.0), Stroke = chance.Between(1.6, 1.9), Under = Under.Center };
        var word = new Word("stem", chance.Of("T", "I", "Y"), face, new(new(0, 22)));
        var fill = new FillArea(Area.Of(Shapes.Oval(new(0, 28), 38, 27))) { Name = "ground" }.Vary(chance);
        var good = new Design(new Block(yarns[0], fill), new Block(yarns[1], word.Parts())) { Habits = habits };
        return new(good, good with { Blocks = [good.Blocks[1]] }) { Where = ["stem"], Companions = ["seam.no-underlay"] };
    }

    internal static Pair GapOnSeam(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(5.5, 5.7)) with { Stroke = 1.22, Gap = 0.9 };
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.OpenPairs);
        var shift = word with { Offset = (word.MiddleGap / 2) + (Letter.Width(word.Text[0], face) * 0.2) + 1.4 };
        while (SeamCare.Nearest(shift.Parts()) > Limits.SeamTextNear * 0.5)
            shift = shift with { Offset = shift.Offset + 0.3 };
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance));
        Design Draw(Word line) => new(new Block(yarn, line.Parts())) { Habits = habits };
        return new(Draw(word), Draw(shift)) { Place = new(-5, 13, 5, 20), Companions = ["seam.column-on-seam"] };
    }

    internal static Pair UprightRows(Chance chance)
    {
        var (yarns, habits) = (Kit.Yarns(chance, 2), Habits.Draw(chance));
        var outline = chance.Of(Shapes.Disk(new(0, 30), 14), Shapes.Panel(new(-12, 15, 12, 45), 4), Shapes.Shield(new(-14, 15, 14, 45)));
        var (fill, border) = Kit.Bordered("shape", outline, 2.8, 1.4, 90);
        var bad = new Design(new Block(yarns[0], fill), new Block(yarns[1], border)) { Habits = habits };
        return new(bad.WithTicket(ticket => ticket with { Style = "five-panel-structured-mid" }), bad)
        {
            Where = ["shape fill"],
            Companions = ["order.across-seam", "seam.no-underlay"],
        };
    }
}
