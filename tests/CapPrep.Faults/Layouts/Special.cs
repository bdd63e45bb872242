using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Foam and appliqué: work with stops at which a person lays something down.</summary>
internal static class Special
{
    /// <summary>A flat bottom line, two marks that show where the foam goes, the stop, and letters over the foam.</summary>
    internal static Design FoamWord(Chance chance)
    {
        var yarns = Kit.Yarns(chance, 2);
        var face = Kit.FaceOf(chance, 7.2);
        var foam = new FoamFace(chance.Between(20.0, 24.0), chance.Between(5.8, 7.2)) { Pitch = chance.Between(0.18, 0.22), Gap = 3.2 };
        var letters = FoamWork.Letters(chance.Of("LIFT", "HILT", "TILE", "FLEE"), foam, new(0, 26));
        var placing = FoamWork.Marks(letters);
        return new(
            new Block(yarns[0], Kit.Line(chance, "tagline", Kit.Foot, face, Names.Pairs).Parts()),
            new Block(yarns[1], placing),
            new Block(yarns[1] with { Foam = true }, letters) { Action = "layFoam" })
        {
            Habits = Habits.Draw(chance),
            Ticket = new() { Technique = "partFoam" },
        };
    }

    /// <summary>Where the cloth goes; stop; tack-down; stop to cut it; the cover over the edge.</summary>
    internal static Design Applique(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        var center = new Vec(0, 34);
        var outline = chance.Of(Shapes.Oval(center, 56, 34), Shapes.Panel(Rect.Around(center, 50, 34), 8), Shapes.Disk(center, 18));
        return new(
            new Block(yarn, new RunningLine(outline) { Name = "placing", Stitch = 2.2 }),
            new Block(yarn, Tack(outline)) { Action = "placePatch" },
            new Block(yarn, new SatinColumn(Crests.Overlapped(outline), chance.Between(3.4, 4.2)) { Name = "cover", Under = Under.Zigzag }) { Action = "trimFabric" })
        {
            Habits = Habits.Draw(chance) with { TrimJumps = 3 },
            Ticket = new() { Technique = "applique" },
        };
    }

    private static GivenDots Tack(Curve outline)
    {
        var count = (int)(outline.Length / 1.2);
        var dots = Enumerable.Range(0, count + 2).Select(k =>
        {
            var at = Math.Clamp(outline.Length * (k % count) / count, 1e-6, outline.Length - 1e-6);
            return new Dot(outline.At(at) + (outline.Direction(at).Left * (k % 2 == 0 ? 0.9 : -0.9)), SewnAs.Running, Purpose.Underlay);
        });
        return new([.. dots]) { Name = "tack" };
    }
}
