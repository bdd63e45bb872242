using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Plants;
using CapPrep.FaultCorpus.Sewing;
using CapPrep.FaultCorpus.Tapes;

namespace CapPrep.FaultCorpus.Good;

/// <summary>Ways of making that only look wrong.</summary>
internal static class Made
{
    /// <summary>Wide, dense, without underlay, layer on layer: right over foam, once the operator can lay it.</summary>
    internal static Pair Foam(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        var foam = new FoamFace(chance.Between(26.0, 30.0), 9) { Pitch = 0.18, Gap = 3.4 };
        var letters = FoamWork.Letters(chance.Of("IT", "LI", "TH", "HI"), foam, new(0, 15));
        var marks = FoamWork.Marks(letters);
        var good = new Design(new Block(yarn, marks), new Block(yarn with { Foam = true }, letters) { Action = "layFoam" })
        {
            Habits = Habits.Draw(chance),
            Ticket = new() { Technique = "foam" },
        };
        return new(good, good with { Blocks = [new(yarn with { Foam = true }, [.. marks, .. letters.Select((part, k) => k == 0 ? part with { Reach = Reach.Trim } : part)])] })
        {
            Where = ["foam"],
        };
    }

    internal static Pair Applique(Chance chance)
    {
        var good = Special.Applique(chance);
        var (placing, tack, cover) = (good.Blocks[0], good.Blocks[1], good.Blocks[2]);
        return new(good, good with { Blocks = [placing with { Parts = [.. placing.Parts, .. tack.Parts] }, cover] })
        {
            Where = ["placing", "tack", "cover"],
        };
    }

    internal static Pair Blend(Chance chance)
    {
        var good = Grids.Blend(chance);
        return new(good, good with { Blocks = [good.Blocks[0], good.Blocks[2]] }) { Where = ["low"] };
    }

    /// <summary>Cloth shows through as letters; bars of fill stay between them.</summary>
    internal static Pair OpenLetters(Chance chance)
    {
        var (bottom, height, bar) = (20.0, chance.Between(11.0, 13.0), chance.Between(3.2, 4.2));
        Vec At(double x, double y) => new(x, bottom + y);
        IReadOnlyList<IReadOnlyList<Vec>> holes =
        [
            [At(-13 - bar, 0), At(-13 - bar, height), At(-16 - bar, height), At(-16 - bar, 0)],
            [At(-11, 0), At(-11 + 8, 0), At(-11 + 8, 3), At(-8, 3), At(-8, height), At(-11, height)],
            [At(3, height), At(3, height - 3), At(6, height - 3), At(6, 0), At(9, 0), At(9, height - 3), At(12, height - 3), At(12, height)],
        ];
        var outline = Shapes.Panel(new(-27, 14, 27, bottom + height + 6), 4);
        var area = holes.Aggregate(Area.Of(outline), (all, hole) => all.Without(hole));
        var fill = new FillArea(area) { Name = "ground", Degrees = chance.Between(-12.0, 12.0), Under = Under.Across };
        var good = new Design(new Block(chance.Of(Yarn.All), fill)) { Habits = Habits.Draw(chance) };
        return new(good, good.With("ground", part => ((FillArea)part) with { Degrees = 88 }))
        {
            Where = ["ground"],
            Companions = ["order.across-seam", "seam.no-underlay"],
        };
    }

    internal static Pair MachineTies(Chance chance)
    {
        var good = Crests.OverWord(chance);
        good = good with
        {
            Habits = good.Habits with { Ties = false, MachineTies = true, StartsAtBottom = false },
            File = new FileHabits { EndRecord = false },
        };
        return new(good, good.WithHabits(habits => habits with { MachineTies = false }));
    }
}
