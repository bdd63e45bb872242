using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Plants;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Good;

/// <summary>Text that only looks wrong.</summary>
internal static class OnText
{
    /// <summary>The word stands on the seam; the small sign at its end is left out when the design is centered.</summary>
    internal static Pair Registered(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(9.5, 11.0));
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.Odd);
        var center = new Vec((word.Length / 2) + 5, Kit.Foot + face.Height - 1.6);
        var sign = new SatinColumn(Crests.Overlapped(Curve.Circle(center, 1.1)), 1.0) { Name = "sign", Reach = Reach.Trim };
        var good = new Design(new Block(chance.Of(Yarn.All), [.. word.Parts(), sign])) { Habits = Habits.Draw(chance), SeatsByBox = true };
        var middle = good.Box.Center.X;
        var bad = good.Moved(at => at - new Vec(middle, 0)) with { SeatsByBox = false, SeatsByOrigin = true };
        return new(good, bad) { Where = ["word"], Companions = ["place.eye-center"], AtLeast = "note" };
    }

    internal static Pair Slanted(Chance chance)
    {
        var good = Texts.Script(chance);
        Part Thin(Part part) => part switch
        {
            Letter letter => letter with { Face = letter.Face with { Stroke = 0.7 } },
            SatinColumn { Name: var name } column when name.EndsWith("join", StringComparison.Ordinal) => column with { Width = 0.65 },
            _ => part,
        };
        return new(good, good.Map(Thin)) { Where = ["script"], Companions = ["stitch.dense", "stitch.short"] };
    }

    internal static Pair SingleLine(Chance chance)
    {
        var good = Texts.SingleLine(chance);
        var letters = good.Blocks[0].Parts.Cast<Letter>().OrderBy(letter => letter.Glyph).ToList();
        var face = new Face { Height = letters[0].Face.Height, Stroke = 1.05, Gap = 0.9 };
        var text = string.Concat(letters.Select(letter => letter.Sign));
        var satin = new Word("small", text, face, new(new(0, Kit.Foot))) { MiddleGap = 3 };
        return new(good, good with { Blocks = [good.Blocks[0] with { Parts = satin.Parts() }, .. good.Blocks.Skip(1)] })
        {
            Where = ["small"],
            Companions = ["stitch.column-narrow", "lettering.counter", "lettering.gap", "stitch.dense", "stitch.short", "seam.small-text", "seam.column-on-seam"],
        };
    }

    internal static Pair FineThread(Chance chance)
    {
        var face = new Face { Height = chance.Between(4.1, 4.4), Stroke = 0.98, Gap = 0.85, Pitch = 0.4 };
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.OpenPairs);
        var good = new Design(new Block(chance.Of(Yarn.All) with { WeightWt = 60 }, word.Parts())) { Habits = Habits.Draw(chance) };
        return new(good, good with { Blocks = [good.Blocks[0] with { Yarn = good.Blocks[0].Yarn with { WeightWt = 40 } }] })
        {
            Where = ["word"],
            Companions = ["stitch.column-narrow", "lettering.counter"],
        };
    }

    /// <summary>The arch is stretched with its rows, which open.</summary>
    internal static Pair BackArch(Chance chance)
    {
        var good = Grids.BackArch(chance);
        var scale = 67 / good.Box.Width;
        return new(good, good.Moved(at => new(at.X * scale, 14 + ((at.Y - 14) * Math.Min(1.2, scale)))))
        {
            Where = ["arch"],
            Companions = ["place.outside-field", "lettering.gap", "place.turns-away", "stitch.cover"],
        };
    }

    internal static Pair Serifs(Chance chance)
    {
        var face = new Face { Height = chance.Between(10.0, 12.0), Stroke = chance.Between(1.5, 1.8), Serifs = true, Tapers = true, Gap = 1.1 };
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.Pairs);
        var good = new Design(new Block(chance.Of(Yarn.All), word.Parts())) { Habits = Habits.Draw(chance) };
        return new(good, good.Map(part => part is Letter letter ? letter with { Face = letter.Face with { Stroke = 0.7 } } : part))
        {
            Where = ["word"],
            Companions = ["stitch.short", "stitch.dense"],
        };
    }
}
