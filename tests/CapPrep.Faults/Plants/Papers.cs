using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Layouts;
using CapPrep.FaultCorpus.Sewing;
using CapPrep.FaultCorpus.Tapes;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>Tickets that contradict the tape or themselves, and files that are not whole.</summary>
internal static class Papers
{
    internal static readonly IReadOnlyList<Plant> All =
    [
        new("ticket.threads", chance => Ticket(chance, design => Named(design, design.Blocks.Count + chance.Of(-1, 1)))),
        new("ticket.needles", TooManyThreads),
        new("ticket.size", chance => Ticket(chance, WrongSize(chance))),
        new("ticket.contrast", NoContrast),
        new("ticket.style", chance => Ticket(chance, design => design.WithTicket(ticket => ticket with { Sku = "ZZ-UNKNOWN" }))),
        new("ticket.technique", FoamUnsaid),
        File("tape.cut-off", chance => new() { AnnouncedShare = 1 + chance.Between(0.03, 0.9), EndRecord = false }, "tape.no-end", "tape.header-counts") with { },
        File("tape.header-counts", _ => new() { AnnouncedShare = 0.8 }, "tape.cut-off"),
        File("tape.header-extents", chance => new() { ExtentsOff = chance.Between(2, 70) }),
        File("tape.header-colors", chance => new() { AnnouncedExtraStops = chance.Between(1, 3) }, "tape.header-counts"),
        File("tape.no-end", _ => new() { EndRecord = false }),
        File("tape.part-record", chance => new() { StrayBytes = chance.Between(1, 2), EndRecord = false }, "tape.no-end"),
        File("tape.after-end", chance => new() { AfterEnd = chance.Between(1, 6) }, "tape.header-counts"),
        File("tape.empty-block", _ => new() { EmptyBlock = true }, "tape.header-colors"),
        File("tape.zero-stitches", chance => new() { ZeroStitches = chance.Between(8, 30) }, "tape.repeated-points"),
        File("tape.unknown-bits", chance => new() { UnknownBits = chance.Between(1, 3) }, "tape.header-counts"),
    ];

    private static Pair Ticket(Chance chance, Func<Design, Design> change)
    {
        var good = Crests.OverTagline(chance);
        return new(good, change(good));
    }

    private static Design Named(Design design, int count) => design.WithTicket(ticket => ticket with
    {
        Threads = [.. Yarn.All.Take(count).Select((yarn, k) => new ThreadNote(k + 1, yarn.Name, yarn.Color))],
    });

    private static Pair TooManyThreads(Chance chance)
    {
        var parts = Enumerable.Range(0, chance.Between(13, 14)).Select(k => Good.OnOrder.Disk($"disk {k}", new(((k % 5) - 2) * 15, 19 + (k / 5 * 13)), 5)).ToList();
        Yarn Of(int k) => new($"Thread {k}", $"#{(k * 17 % 256):X2}{(k * 91 % 256):X2}{(k * 53 % 256):X2}");
        int[] outward = [2, 3, 4, 1, 0];
        var order = Enumerable.Range(0, 3).SelectMany(row => outward.Select(column => (row * 5) + column)).Where(k => k < parts.Count).ToList();
        Design Draw(int most) => new([.. order.Take(most).Select(k => new Block(Of(k), parts[k]))]);
        return new(Draw(9), Draw(order.Count)) { Companions = ["order.center-out", "order.bottom-up"] };
    }

    private static Func<Design, Design> WrongSize(Chance chance)
    {
        var share = 1 + (chance.Between(0.07, 0.3) * chance.Of(-1, 1));
        return design => design.WithTicket(ticket => ticket with { ExpectedWidthMm = Math.Round(design.Box.Width * share), ExpectedHeightMm = null });
    }

    private static Pair NoContrast(Chance chance)
    {
        var good = Texts.WideLine(chance);
        var cap = Good.OnOrder.Near(good.Blocks[0].Yarn.Color);
        var other = good.Blocks[0].Yarn == Yarn.White ? Yarn.Navy : Yarn.White;
        return new(
            good.Blocks[0].Yarn is var yarn && (yarn == Yarn.Silver || yarn == Yarn.Sand || yarn == Yarn.Rose)
                ? good.WithTicket(ticket => ticket with { CapColor = Yarn.Navy.Color })
                : good.WithTicket(ticket => ticket with { CapColor = other.Color }),
            good.WithTicket(ticket => ticket with { CapColor = cap }));
    }

    /// <summary>Looks like foam, and the ticket says nothing.</summary>
    private static Pair FoamUnsaid(Chance chance)
    {
        var yarn = chance.Of(Yarn.All);
        var letters = Letters.FoamWork.Letters(chance.Of("HI", "IT", "LI"), new(chance.Between(32.0, 35.0), chance.Between(6.0, 7.0)) { Pitch = 0.2, Gap = 3.4 }, new(0, 15));
        var good = new Design(new Block(yarn, Letters.FoamWork.Marks(letters)), new Block(yarn with { Foam = true }, letters) { Action = "layFoam" })
        {
            Habits = Habits.Draw(chance),
            Ticket = new() { Technique = "foam" },
        };
        return new(good, good with { Ticket = good.Ticket with { Technique = null }, Blocks = [.. good.Blocks.Select(block => block with { Yarn = block.Yarn with { Foam = false }, Action = null })] })
        {
            Companions = ["stitch.column-wide", "stitch.crowded", "stitch.dense", "stitch.stacked", "seam.no-underlay", "stitch.no-underlay"],
        };
    }

    private static Plant File(string rule, Func<Chance, FileHabits> change, params IReadOnlyList<string> companions) => new(rule, chance =>
    {
        var good = Crests.OverTagline(chance);
        return new(good, good with { File = change(chance) }) { Companions = companions, AtLeast = "note" };
    });
}
