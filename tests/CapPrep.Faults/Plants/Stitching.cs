using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Good;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Stitches that break needles or thread, or do not cover.</summary>
internal static class Stitching
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("stitch.short", Short),
        new("stitch.long", Long),
        new("stitch.column-narrow", chance => Narrow(chance, -Limits.Beyond(chance, Limits.ColumnWarn, 0.4))) { Near = Narrow },
        new("stitch.column-wide", chance => Wide(chance, Limits.Beyond(chance, Limits.SatinWarn, 0.3))) { Near = Wide, IsUpper = true },
        new("stitch.dense", Dense),
        new("stitch.cover", Cover),
        new("stitch.stacked", Stacked),
        new("stitch.no-underlay", NoUnderlay),
        new("stitch.no-tie", NoTie),
        new("stitch.loose-travel", Loose),
        new("stitch.small-letter-trim", LetterTrim),
        new("stitch.heavy", Heavy),
    ];

    internal static readonly Plant TooDense = new("stitch.crowded", Crowded);

    /// <summary>Needle points that hardly move: a scribble in one spot, or a line of far too many stitches.</summary>
    private static Pair Short(Chance chance)
    {
        var good = Plates.Plate(chance, new(-20, 14, 20, 38));
        var (spot, step) = (new Vec(chance.Between(6.0, 12.0), chance.Between(21.0, 29.0)), chance.Between(0.26, 0.32));
        var scribble = Enumerable.Range(0, 49).Select(k => spot + (new Vec(k / 7 % 2 == 0 ? k % 7 : 6 - (k % 7), k / 7) * step));
        var line = Curve.Smooth(spot, spot + new Vec(-5, 1.5), spot + new Vec(-10, -0.5), spot + new Vec(-16, 1)).Steps(step);
        var knot = chance.Is(0.5) ? scribble : line;
        var extra = new GivenDots([.. knot.Select(at => new Dot(at, SewnAs.Running))]) { Name = "knot", Reach = Reach.Trim };
        var bad = good with { Blocks = [good.Blocks[0] with { Parts = [.. good.Blocks[0].Parts, extra] }, .. good.Blocks.Skip(1)] };
        return new(good, bad) { Where = ["knot"], Companions = ["stitch.dense"], AtLeast = "note" };
    }

    private static Pair Long(Chance chance)
    {
        var good = Crests.OverWord(chance);
        var line = new Curve(new(-30, 57.5), new(30, 57.5));
        Design Draw(double stitch) => good with { Blocks = [.. good.Blocks, new(Yarn.Red, new RunningLine(line) { Name = "underline", Stitch = stitch, Passes = 2 })] };
        return new(Draw(2.2), Draw(chance.Of(10.8, 11.9, 8.5))) { Where = ["underline"], Companions = ["stitch.loose-travel"], AtLeast = "note" };
    }

    private static Pair Narrow(Chance chance, double u)
    {
        var face = Kit.FaceOf(chance, chance.Between(7.0, 9.5)) with { Under = Under.Center };
        var word = Kit.Line(chance, "word", Kit.Foot, face, Names.Pairs);
        var good = new Design(new Block(chance.Of(Yarn.All), word.Parts())) { Habits = Habits.Draw(chance) };
        var stroke = Limits.ColumnWarn * (1 + u);
        return new(good, good.Map(part => part is Letter letter ? letter with { Face = letter.Face with { Stroke = stroke } } : part))
        {
            Where = ["word"],
            Companions = ["stitch.dense", "stitch.short"],
            Beyond = -u,
        };
    }

    private static Pair Wide(Chance chance, double u)
    {
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance));
        var length = chance.Between(18.0, 34.0);
        Design Draw(double width) => new(new Block(yarn, new SatinColumn(new(new(4, 24), new(4 + length, 24)), width) { Name = "bar", Under = Under.Both })) { Habits = habits };
        return new(Draw(6.2), Draw(Limits.SatinWarn * (1 + u))) { Where = ["bar"], Beyond = u, Companions = ["ticket.technique", "stitch.long"] };
    }

    /// <summary>Four fills of short stitches on one spot.</summary>
    private static Pair Dense(Chance chance)
    {
        var good = Plates.Plate(chance, new(-20, 14, 20, 38));
        var spot = new Rect(4, 19, 4 + chance.Between(8.0, 11.0), 19 + chance.Between(8.0, 11.0));
        var layers = Enumerable.Range(0, 4).Select(k => new FillArea(Area.Rectangle(spot)) { Name = $"spot {k}", Degrees = 45 * k, Distance = 0.24, Stitch = 1.15, Under = Under.None, Reach = Reach.Trim });
        var bad = good with { Blocks = [good.Blocks[0] with { Parts = [.. good.Blocks[0].Parts, .. layers] }, .. good.Blocks.Skip(1)] };
        return new(good, bad) { Where = ["spot"], Companions = ["stitch.stacked", "stitch.short", "stitch.crowded"] };
    }

    /// <summary>Rows so far apart also end in steps as high under a border.</summary>
    private static Pair Cover(Chance chance)
    {
        var good = OverBars(chance);
        var open = Limits.PitchHigh * (1 + chance.Between(0.2, 0.5));
        return chance.Is(0.5)
            ? new(good, WithBars(good, open)) { Where = ["bar"] }
            : new(good, good.With("plate fill", part => ((FillArea)part) with { Distance = open + 0.1, ZigzagRows = false }))
            {
                Where = ["plate fill"],
                Companions = ["border.overlap"],
            };
    }

    private static Pair Crowded(Chance chance)
    {
        var good = OverBars(chance);
        return new(good, WithBars(good, Limits.PitchLow * (1 - chance.Between(0.33, 0.45)))) { Where = ["bar"], Companions = ["ticket.technique", "stitch.dense"] };
    }

    /// <summary>A plate, and three bars of satin over it.</summary>
    private static Design OverBars(Chance chance)
    {
        var good = Plates.Plate(chance, new(-20, 14, 20, 38));
        var columns = Enumerable.Range(-1, 3).Select(k => new SatinColumn(new(new(k * 15 - 5, 46), new(k * 15 + 5, 46)), 4) { Name = $"bar {k}", Reach = Reach.Trim, Under = Under.Zigzag });
        return good with { Blocks = [.. good.Blocks, new(Yarn.Plum, [.. columns])] };
    }

    private static Design WithBars(Design good, double pitch) => good.Map(part => part is SatinColumn { Width: 4 } bar ? bar with { Pitch = pitch } : part);

    private static Pair Stacked(Chance chance)
    {
        var (habits, seed) = (Habits.Draw(chance), chance.Between(10.0, 15.0));
        Design Draw(int layers) => new(new Block(Yarn.Navy, [.. Enumerable.Range(0, layers).Select(k => new FillArea(Area.Rectangle(new(-18, 15, -18 + seed, 15 + seed)))
        {
            Name = $"layer {k}",
            Degrees = 38 * k,
            Stitch = 4.4,
            Under = k == 0 ? Under.Across : Under.None,
            Reach = Reach.Trim,
        }), OnOrder.Disk("disk", new(12, 22), 7)]))
        { Habits = habits };
        return new(Draw(2), Draw(chance.Of(5, 5, 6))) { Where = ["layer"], Companions = ["stitch.dense"] };
    }

    /// <summary>On cloth without stiffener, beside the seam.</summary>
    private static Pair NoUnderlay(Chance chance)
    {
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance));
        FillArea Disk(string name, double x, Under under) => OnOrder.Disk(name, new(x, 26), 8) with { Under = under };
        Design Draw(Under under) => new(new Block(yarn, Disk("right", 18, Under.Across), Disk("left", -18, under)))
        {
            Habits = habits,
            Ticket = new() { Style = "six-panel-unstructured-low" },
        };
        return new(Draw(Under.Mesh), Draw(Under.None)) { Where = ["left"] };
    }

    private static Pair NoTie(Chance chance)
    {
        var good = Grids.ThreeByThree(chance);
        return new(good, good.WithHabits(habits => habits with { Ties = false }));
    }

    private static Pair Loose(Chance chance)
    {
        var (yarn, habits) = (chance.Of(Yarn.All), Habits.Draw(chance) with { TrimJumps = chance.Of(2, 3, 4), JitterShare = 0 });
        var gap = chance.Between(6.2, 10.0);
        Design Draw(Reach reach) => new(new Block(yarn,
            new SatinColumn(new(new(2, 20), new(18, 20)), 4) { Name = "right", Under = Under.Zigzag },
            new SatinColumn(new(new(18 + gap, 20), new(34 + gap, 20)), 4) { Name = "far", Under = Under.Zigzag, Reach = reach },
            new SatinColumn(new(new(-2, 20), new(-44, 20)), 4) { Name = "left", Under = Under.Zigzag, Reach = Reach.Trim }))
        { Habits = habits };
        return new(Draw(Reach.Trim), Draw(Reach.Loose)) { Place = new(17, 17, 19 + gap, 23), Companions = ["stitch.long"] };
    }

    /// <summary>Letters that all end at the foot of the next one, so that nothing needs a trim.</summary>
    private static Pair LetterTrim(Chance chance)
    {
        var face = Kit.FaceOf(chance, chance.Between(5.3, 5.7)) with { Stroke = 1.22, Gap = 0.9, WordGap = 0.85 };
        var word = Kit.Line(chance, "word", Kit.Foot, face, ["MILL HILL", "HILL MILL", "KILN HILL"]);
        var good = new Design(new Block(chance.Of(Yarn.All), word.Parts())) { Habits = Habits.Draw(chance) with { WalkUpTo = 4.5, Floats = false } };
        return new(good, good.Map(part => part with { Reach = Reach.Trim })) { Where = ["word"], AtLeast = "note" };
    }

    /// <summary>More than 12,000 stitches on cloth without stiffener (house).</summary>
    private static Pair Heavy(Chance chance)
    {
        var box = new Rect(-40, Kit.Foot, 40, Kit.Foot + chance.Between(34.0, 37.0));
        var good = Plates.Plate(chance, box.Grown(-9)).WithTicket(ticket => ticket with { Style = "six-panel-unstructured-low" });
        FillArea Base(string name, double degrees) => new(Area.Rectangle(box.Grown(-2)))
        {
            Name = name,
            Degrees = degrees,
            Distance = 0.37,
            Stitch = 1.6,
            Under = Under.Across,
            Reach = Reach.Trim,
        };
        var bad = good with { Blocks = [new Block(Yarn.Navy, Base("base", 0), Base("plate top", 12), Base("plate third", -12))] };
        return new(good, bad) { Where = ["base", "plate"], Companions = ["stitch.dense", "stitch.stacked", "order.ring"], AtLeast = "note" };
    }
}
