using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Text that will not read, or does not lie right.</summary>
internal static class Letterings
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("lettering.small", chance => Small(chance, -Limits.Beyond(chance, Limits.LetterWarn, 0.22))) { Near = Small },
        new("lettering.counter", chance => Counter(chance, -Limits.Beyond(chance, Limits.Counter, 0.5))) { Near = Counter },
        new("lettering.gap", chance => Gap(chance, -Limits.Beyond(chance, Limits.LetterGap, 0.7))) { Near = Gap },
        new("place.not-level", NotLevel),
        new("place.bow", Bow),
        new("place.eye-center", EyeCenter),
        new("place.turned", Turned),
    ];

    private static Design Line(Chance chance, Word word, Habits habits) => new(new Block(Yarn.Navy, word.Parts())) { Habits = habits };

    private static Pair Small(Chance chance, double u)
    {
        var habits = Habits.Draw(chance);
        Word Draw(double height) => new("word", chance.Of("HILL COUNTY"), new Face { Height = height, Stroke = 1.22, Gap = 0.9 }, new(new(0, Kit.Foot)))
        {
            GapOnFoot = true,
            MiddleGap = 3.2,
        };
        return new(Line(chance, Draw(6.8), habits), Line(chance, Draw(Limits.LetterWarn * (1 + u)), habits))
        {
            Where = ["word"],
            Companions = ["lettering.counter", "stitch.small-letter-trim"],
            Beyond = -u,
        };
    }

    /// <summary>Strokes so wide that the openings of letters nearly close.</summary>
    private static Pair Counter(Chance chance, double u)
    {
        var habits = Habits.Draw(chance);
        var text = chance.Of("BB RR", "RB BR", "BR PB");
        var height = chance.Between(7.4, 8.4);
        Word Draw(double stroke) => new("word", text, new Face { Height = height, Stroke = stroke, Gap = 1.2 }, new(new(0, Kit.Foot))) { GapOnFoot = true, MiddleGap = 4 };
        var (wide, tooWide) = (1.2, 3.2);
        for (var step = 0; step < 8; step++)
        {
            var middle = (wide + tooWide) / 2;
            (wide, tooWide) = Opening(Draw(middle)) > Limits.Counter * (1 + u) ? (middle, tooWide) : (wide, middle);
        }

        return new(Line(chance, Draw(1.22), habits), Line(chance, Draw(tooWide), habits)) { Where = ["word"], Companions = ["stitch.dense"], Beyond = -u };
    }

    /// <summary>The median over the line, of letters that all have one; 0 once strokes are so wide that it is closed.</summary>
    private static double Opening(Word word)
    {
        double[] openings = [.. word.Text.Where(sign => sign != ' ').Select(sign => Counters.Exact(sign, word.Face) ?? 0).Order()];
        return (openings[(openings.Length - 1) / 2] + openings[openings.Length / 2]) / 2;
    }

    private static Pair Gap(Chance chance, double u)
    {
        var habits = Habits.Draw(chance) with { JitterShare = 0 };
        var face = Kit.FaceOf(chance, chance.Between(8.0, 10.0));
        var text = chance.Of("HUNDIN", "DILUNE", "MINUHE");
        Word Draw(double gap) => new("word", text, face with { Gap = gap }, new(new(0, Kit.Foot))) { GapOnFoot = true, MiddleGap = 4 };
        return new(Line(chance, Draw(1.2), habits), Line(chance, Draw(Limits.LetterGap * (1 + u)), habits)) { Where = ["word"], Beyond = -u };
    }

    private static Pair NotLevel(Chance chance)
    {
        var good = Texts.WideLine(chance);
        var degrees = chance.Between(1.1, 3.2) * chance.Of(-1, 1);
        var middle = good.Box.Center;
        return new(good, good.Moved(at => middle + (at - middle).Turned(degrees) + new Vec(0, 4))) { Where = ["line"] };
    }

    private static Pair Bow(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(8.2, 9.2));
        var word = Kit.Line(chance, "line", Kit.Foot, face with { Gap = 1.6, WordGap = 1 }, ["HARBOR LIONS", "CEDAR CREEK", "STONE RIDGE"]);
        var bad = Line(chance, word, Habits.Draw(chance)).WithTicket(ticket => ticket with { Style = "six-panel-structured-low" });
        return new(bad.WithTicket(ticket => ticket with { Style = "six-panel-structured-mid" }), bad) { Where = ["line"], AtLeast = "note" };
    }

    /// <summary>A long swash at one side carries the box, and with it the word, off the seam.</summary>
    private static Pair EyeCenter(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(8.5, 10.0));
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.Odd);
        var good = Line(chance, word, Habits.Draw(chance));
        var end = word.Length / 2;
        var swash = new SatinColumn(new(new(end + 3, Kit.Foot + 3), new(end + chance.Between(12.0, 20.0), Kit.Foot + 4)), 2) { Name = "swash", Reach = Reach.Trim };
        var bad = good with { Blocks = [good.Blocks[0] with { Parts = [.. good.Blocks[0].Parts, swash] }] };
        var middle = bad.Box.Center.X;
        return new(good, bad.Moved(at => at - new Vec(middle, 0)))
        {
            Where = ["word"],
            AtLeast = "note",
            Companions = ["seam.column-on-seam", "seam.small-text", "order.text-line"],
        };
    }

    private static Pair Turned(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(10.0, 12.0)) with { Gap = 1.3 };
        var word = new Word("word", chance.Of("alderbrook", "willowbank", "blackthorn", "hillbrook"), face, new(new(0, Kit.Foot + 3)));
        var good = Line(chance, word, Habits.Draw(chance));
        var middle = good.Box.Center;
        return new(good, good.Moved(at => (middle * 2) - at)) { Where = ["word"], Companions = ["seam.column-on-seam", "order.text-line"] };
    }
}
