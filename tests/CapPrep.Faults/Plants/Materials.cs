using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Good;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Foam, appliqué and metallic thread used wrongly.</summary>
internal static class Materials
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("foam.open-end", chance => Foam(chance, Word(chance), static parts => [.. parts.Where(part => !part.Name.Contains("cap", StringComparison.Ordinal))])),
        new("foam.narrow", chance => Foam(chance, Word(chance) with { Stroke = Limits.FoamNarrow * (1 - Limits.Beyond(chance, Limits.FoamNarrow, 0.4)) })),
        new("foam.wide", chance => Foam(chance, new(36, Limits.FoamWide * (1 + Limits.Beyond(chance, Limits.FoamWide, 0.2))) { Pitch = 0.2, Gap = 3 }, text: "I") with { Companions = ["stitch.long"] }),
        new("foam.pitch", chance => Foam(chance, Word(chance) with { Pitch = chance.Of(0.09, 0.31, 0.36) })),
        new("foam.no-stop", Made.Foam),
        new("foam.then-flat", ThenFlat),
        new("foam.fill", FoamFill),
        new("foam.gap", chance => Foam(chance, Word(chance) with { Gap = Limits.FoamGap * (1 - Limits.Beyond(chance, Limits.FoamGap)) }) with { Companions = ["foam.across-seam", "seam.joint"] }),
        new("foam.style", FoamOnSide),
        new("foam.across-seam", EndOnSeam),
        new("applique.no-stop", Made.Applique),
        new("applique.cover", chance => Cover(chance, -Limits.Beyond(chance, 3, 0.3))) { Near = Cover },
        new("applique.edge", Edge),
        new("applique.early", Early),
        new("metallic.step", chance => Metallic(chance, 0.5, 1.1, "metallic.column", "metallic.pitch")),
        new("metallic.pitch", chance => Metallic(chance, chance.Between(0.31, 0.35), 2.4)),
        new("metallic.column", chance => Metallic(chance, 0.5, chance.Between(1.05, 1.25), "metallic.step", "metallic.pitch")),
    ];

    private static FoamFace Word(Chance chance) => new(chance.Between(22.0, 26.0), chance.Between(6.0, 7.4)) { Pitch = chance.Between(0.19, 0.21), Gap = 3.2 };

    private static Design Draw(string text, FoamFace face, Func<IReadOnlyList<Part>, IReadOnlyList<Part>>? change = null)
    {
        var letters = FoamWork.Letters(text, face, new(0, 15));
        return new(new Block(Yarn.Red, FoamWork.Marks(letters)), new Block(Yarn.Red with { Foam = true }, change?.Invoke(letters) ?? letters) { Action = "layFoam" })
        {
            Ticket = new() { Technique = "foam" },
        };
    }

    private static Pair Foam(Chance chance, FoamFace bad, Func<IReadOnlyList<Part>, IReadOnlyList<Part>>? change = null, string? text = null)
    {
        var habits = Habits.Draw(chance);
        text ??= chance.Of("HI", "IT", "LI", "HL");
        var good = new FoamFace(24, 6.6) { Pitch = 0.2, Gap = 3.2 };
        if (text == "I")
            good = good with { Stroke = 9 };
        return new(Draw(text, good) with { Habits = habits }, Draw(text, bad, change) with { Habits = habits }) { Where = ["foam"] };
    }

    private static Pair ThenFlat(Chance chance)
    {
        var good = Special.FoamWord(chance);
        return new(good, good with { Blocks = [good.Blocks[1], good.Blocks[2], good.Blocks[0]] })
        {
            Where = ["tagline", "foam"],
            Companions = ["order.tagline-first", "order.bottom-up"],
        };
    }

    private static Pair FoamFill(Chance chance)
    {
        var habits = Habits.Draw(chance);
        var good = Draw("HI", Word(chance)) with { Habits = habits };
        var fill = new FillArea(Area.Rectangle(new(-17, 42, 17, 58))) { Name = "foam fill", Distance = 0.36, Reach = Reach.Trim };
        return new(good, good with { Blocks = [good.Blocks[0], good.Blocks[1] with { Parts = [.. good.Blocks[1].Parts, fill] }] })
        {
            Where = ["foam fill"],
            Companions = ["foam.pitch", "foam.wide", "foam.gap", "foam.open-end"],
        };
    }

    private static Pair FoamOnSide(Chance chance)
    {
        var good = Draw(chance.Of("HI", "IT", "LI"), new(chance.Between(21.0, 25.0), 6.4) { Pitch = 0.2, Gap = 3.2 }) with { Habits = Habits.Draw(chance) };
        return new(good, good.WithTicket(ticket => ticket with { Location = chance.Of("left", "right"), CapFrame = "wide-270" }))
        {
            Companions = ["ticket.technique"],
        };
    }

    /// <summary>A bar over foam whose closed end lies on the seam.</summary>
    private static Pair EndOnSeam(Chance chance)
    {
        var habits = Habits.Draw(chance);
        Design Draw(double from)
        {
            SatinColumn Column(string name, Curve path, double width) => new(path, width) { Name = name, Pitch = 0.2, Under = Under.None, Reach = Reach.Trim };
            return new(
                new Block(Yarn.Red, new RunningLine(new(new(from + 4, 25), new(from + 20, 25))) { Name = "mark", Passes = 2 }),
                new Block(Yarn.Red with { Foam = true },
                    Column("foam cap 0", new(new(from + 1, 21), new(from + 1, 29)), 2.4),
                    Column("foam cap 1", new(new(from + 24, 21), new(from + 24, 29)), 2.4),
                    Column("foam bar", new(new(from, 25), new(from + 25, 25)), 8))
                { Action = "layFoam" })
            {
                Habits = habits,
                Ticket = new() { Technique = "foam" },
            };
        }

        return new(Draw(-12.5), Draw(0.1)) { Where = ["foam"], Companions = ["place.eye-center"] };
    }

    private static Pair Cover(Chance chance, double u)
    {
        var good = Special.Applique(chance);
        return new(good, good.With("cover", part => ((SatinColumn)part) with { Width = 3 * (1 + u) })) { Where = ["cover"], Beyond = -u };
    }

    /// <summary>The cover lies almost wholly on one side of the edge.</summary>
    private static Pair Edge(Chance chance)
    {
        var good = Special.Applique(chance);
        var aside = chance.Between(1.4, 1.9) * chance.Of(-1, 1);
        return new(good, good.With("cover", part => ((SatinColumn)part) with { Path = ((SatinColumn)part).Path.Beside(aside) })) { Where = ["cover"] };
    }

    private static Pair Early(Chance chance)
    {
        var good = Special.Applique(chance);
        var (placing, tack, cover) = (good.Blocks[0], good.Blocks[1], good.Blocks[2]);
        return new(good, good with { Blocks = [placing, cover with { Action = "placePatch" }, tack with { Action = "trimFabric" }] })
        {
            Where = ["cover", "tack"],
            Companions = ["applique.no-stop", "applique.edge", "applique.cover"],
        };
    }

    private static Pair Metallic(Chance chance, double pitch, double stroke, params IReadOnlyList<string> companions)
    {
        var yarn = new Yarn("Bright gold", "#C9A227") { Kind = "metallic" };
        var face = new Face { Height = 12, Stroke = 2.4, Pitch = 0.5, Gap = 1.6 };
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.Odd);
        var good = new Design(new Block(yarn, word.Parts())) { Habits = Habits.Draw(chance) };
        return new(good, good.Map(part => part is Letter letter ? letter with { Face = letter.Face with { Stroke = stroke, Pitch = pitch } } : part))
        {
            Where = ["word"],
            Companions = companions,
        };
    }
}
