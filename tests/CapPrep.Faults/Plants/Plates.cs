using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Faults of size and place: one bordered plate, too large or in the wrong place.</summary>
internal static class Plates
{
    private static readonly string[] OffZone = ["place.outside-field", "place.turns-away", "order.ring", "place.off-center", "place.eye-center", "place.travel-outside"];

    internal static readonly IReadOnlyList<Plant> All =
    [
        new("place.outside-field", chance => Moved(chance, new(-15, 14, 15, 38), 64 + chance.Between(1.0, 9.0), ["place.side-seam", "place.posts"])),
        new("place.travel-outside", TravelOutside),
        new("place.too-tall", TooTall) { Near = (chance, u) => Tall(chance, Limits.HeightWarn * (1 + u)), IsUpper = true },
        new("place.crown", Crown),
        new("place.too-wide", TooWide) { Near = (chance, u) => Wide(chance, Limits.WidthWarn * (1 + u)), IsUpper = true },
        new("place.brim-clearance", chance => Low(chance, -Limits.Beyond(chance, Limits.BrimWarn))) { Near = Low },
        new("place.side-seam", chance => Moved(chance, new(-14, 14, 14, 34), 78 + chance.Between(1.0, 5.0), ["place.posts"])),
        new("place.eyelet", Eyelet),
        new("place.posts", chance => Moved(chance, new(-14, 14, 14, 34), 69 + chance.Between(1.0, 9.0), ["place.side-seam"])),
        new("place.off-center", OffCenter),
        new("place.turns-away", TurnsAway),
    ];

    internal static Design Plate(Chance chance, Rect box, bool isOval = false)
    {
        var yarns = Kit.Yarns(chance, 2);
        var outer = box.Grown(-1.4);
        var outline = isOval ? Shapes.Oval(outer.Center, outer.Width, outer.Height) : Shapes.Panel(outer, 6);
        var (fill, border) = Kit.Bordered("plate", outline, 2.8, 1.4);
        return new(new Block(yarns[0], fill.Vary(chance)), new Block(yarns[1], border)) { Habits = Habits.Draw(chance) };
    }

    private static Pair Swap(Design good, Design bad, params IReadOnlyList<string> companions) =>
        new(good, bad) { Where = ["plate"], Companions = companions };

    private static Pair Moved(Chance chance, Rect box, double right, IReadOnlyList<string> companions)
    {
        var good = Plate(chance, box);
        var side = chance.Of(-1, 1);
        return Swap(good, good.Moved(at => at + new Vec(side * right, 0)), [.. OffZone, .. companions]);
    }

    private static Pair TravelOutside(Chance chance)
    {
        var good = Crests.OverWord(chance);
        var detour = chance.Of(new Vec(0, 90), new Vec(200, 0), new Vec(-200, 0), new Vec(0, -28));
        return new(good, good with { File = good.File with { Detour = detour } });
    }

    private static Pair TooTall(Chance chance) => Tall(chance, Limits.HeightWarn * (1 + Limits.Beyond(chance, Limits.HeightWarn, 0.3)));

    private static Pair Tall(Chance chance, double height)
    {
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double tall) => Plate(new("plate", seed), new(-24, Kit.Foot, 24, Kit.Foot + tall));
        return Swap(Draw(48), Draw(height), ["place.crown", "place.outside-field", "stitch.heavy"]) with { Beyond = (height / Limits.HeightWarn) - 1 };
    }

    /// <summary>Not too tall, but too high up: the top line of the mid crown lies at 68 mm over the middle (house).</summary>
    private static Pair Crown(Chance chance)
    {
        var (height, over) = (chance.Between(26.0, 34.0), 68 * Limits.Beyond(chance, 68, 0.14));
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double top) => Plate(new("plate", seed), new(-12, top - height, 12, top));
        return Swap(Draw(60), Draw(68 + over), ["place.outside-field"]);
    }

    private static Pair TooWide(Chance chance) => Wide(chance, Limits.WidthWarn * (1 + Limits.Beyond(chance, Limits.WidthWarn, 0.3)));

    private static Pair Wide(Chance chance, double width)
    {
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double wide) => Plate(new("plate", seed), new(-wide / 2, Kit.Foot, wide / 2, Kit.Foot + 14));
        return Swap(Draw(100), Draw(width), ["place.turns-away", "place.outside-field", "place.side-seam", "place.posts", "order.ring", "stitch.heavy", "place.travel-outside"]) with
        {
            Beyond = (width / Limits.WidthWarn) - 1,
        };
    }

    private static Pair Low(Chance chance, double u)
    {
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double bottom) => Plate(new("plate", seed), new(-20, bottom, 20, bottom + 26));
        return Swap(Draw(13.2), Draw(Limits.BrimWarn * (1 + u)), ["place.outside-field", "place.travel-outside"]) with { Beyond = -u };
    }

    /// <summary>The low crown's eyelets lie at 35, 74 mm (house).</summary>
    private static Pair Eyelet(Chance chance)
    {
        var side = chance.Of(-1, 1);
        var seed = chance.Between(0, 1_000_000);
        Design Draw(double x, double top) => Plate(new("plate", seed), new(x - 7, top - 16, x + 7, top))
            .WithTicket(ticket => ticket with { Style = "six-panel-structured-low" });
        return Swap(Draw(0, 45), Draw(side * chance.Between(33.0, 37.0), 74 - chance.Between(0.0, 6.0)), ["place.crown", .. OffZone]);
    }

    private static Pair OffCenter(Chance chance)
    {
        var good = Plate(chance, new(-25, 14, 25, 40));
        var off = chance.Between(2.5, 6.0) * chance.Of(-1, 1);
        var bad = good.Moved(at => at + new Vec(off, 0));
        return Swap(good, bad with { SeatsByOrigin = true }, ["place.eye-center"]) with { AtLeast = "note" };
    }

    private static Pair TurnsAway(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        Design Draw(double x) => new(new Block(yarn, [.. new[] { 0, 1, -1 }.Select(k => Good.OnOrder.Disk($"plate {k}", new(k * x, 25), 6))]));
        var habits = Habits.Draw(chance);
        return Swap(Draw(30) with { Habits = habits }, Draw(chance.Between(58.0, 61.0)) with { Habits = habits }, "place.too-wide") with { AtLeast = "note" };
    }
}
