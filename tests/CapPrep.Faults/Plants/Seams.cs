using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Good;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Work that the center seam spoils.</summary>
internal static class Seams
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("seam.column-on-seam", Stem),
        new("seam.small-text", OnSeam.GapOnSeam),
        new("seam.fill-parallel", AlongSeam),
        new("seam.no-underlay", Bare),
        new("seam.joint", chance => Joint(chance, Limits.SeamJoint * (1 - Limits.Beyond(chance, Limits.SeamJoint, 1.4)))) { Near = (chance, u) => Joint(chance, Limits.SeamJoint * (1 + u)) },
        new("seam.trim-on-step", OnStep),
    ];

    /// <summary>A word whose middle letter has its stem on the seam.</summary>
    private static Pair Stem(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(8.5, 11.5)) with { Stroke = chance.Between(1.25, 1.75) };
        var yarn = chance.Of(Yarn.All);
        var habits = Habits.Draw(chance);
        Design Draw(string text) => new(new Block(yarn, new Word("word", text, face, new(new(0, Kit.Foot))).Parts())) { Habits = habits };
        return new(Draw("LOC"), Draw(chance.Of("LIC", "STO", "CIL", "OTC"))) { Where = ["word.1"], Companions = ["seam.no-underlay"] };
    }

    private static Pair AlongSeam(Chance chance)
    {
        var good = Plates.Plate(chance, new(-18, 14, 18, 14 + chance.Between(22.0, 32.0)), chance.Is(0.5));
        return new(good, good.With("plate fill", part => ((FillArea)part) with { Degrees = 90 + chance.Between(-8.0, 8.0) }))
        {
            Where = ["plate fill"],
            Companions = ["order.across-seam", "seam.no-underlay"],
        };
    }

    private static Pair Bare(Chance chance)
    {
        var good = Plates.Plate(chance, new(-22, 14, 22, 14 + chance.Between(18.0, 30.0)), chance.Is(0.5));
        return new(good, good.With("plate fill", part => ((FillArea)part) with { Under = Under.None })) { Where = ["plate fill"], Companions = ["stitch.no-underlay"] };
    }

    /// <summary>Two halves that hardly meet.</summary>
    private static Pair Joint(Chance chance, double overlap)
    {
        var (reach, height) = (chance.Between(18.0, 32.0), chance.Between(16.0, 28.0));
        var yarn = chance.Of(Yarn.All);
        var habits = Habits.Draw(chance);
        FillArea Half(int side, double lap) => new(Area.Rectangle(side > 0 ? new(-lap / 2, 14, reach, 14 + height) : new(-reach, 14, lap / 2, 14 + height)))
        {
            Name = $"half {side}",
            Degrees = 6 * side,
            Under = Under.Mesh,
            Reach = Reach.Trim,
        };
        Design Draw(double lap) => new(new Block(yarn, Half(1, lap), Half(-1, lap))) { Habits = habits };
        return new(Draw(1.6), Draw(overlap)) { Place = new(-3, 14, 3, 14 + height), Companions = ["seam.no-underlay"], Beyond = 1 - overlap };
    }

    /// <summary>Ends of narrow columns where the cloth steps up to the seam, 8 mm beside it (house).</summary>
    private static Pair OnStep(Chance chance)
    {
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance));
        var height = chance.Between(7.0, 9.0);
        Design Draw(double x) => new(new Block(yarn,
            new SatinColumn(new(new(x, 14), new(x, 14 + height)), 1.4) { Name = "bar right", Reach = Reach.Trim },
            new SatinColumn(new(new(-x, 14), new(-x, 14 + height)), 1.4) { Name = "bar left", Reach = Reach.Trim }))
        { Habits = habits with { JitterShare = 0 } };
        return new(Draw(12.5), Draw(8)) { Where = ["bar"], AtLeast = "note" };
    }
}
