using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnStitches;
using CapPrep.Engine.Tests.Sequence;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;

namespace CapPrep.Engine.Tests.Checks;

/// <summary>For every rule one job at which it is silent and one at which it speaks, by name.</summary>
internal static class RuleCases
{
    internal const string Pass = "_pass";
    internal const string Fail = "_fail";

    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["place.outside-field_pass"] = Job.Clean,
        ["place.outside-field_fail"] = Job.Clean with { Machine = Job.Clean.Machine with { FieldMm = new FieldSize(70, 80) } },
        ["place.travel-outside_pass"] = Job.Clean,
        ["place.travel-outside_fail"] = Job.Clean with { Tape = Stitched.Box(2000, 0, 2800, 450) },
        ["place.too-tall_pass"] = Job.Clean with { Tape = Stitched.Seated(300, 550) },
        ["place.too-tall_fail"] = Job.Clean with { Tape = Stitched.Seated(300, 551) },
        ["place.crown_pass"] = Job.Clean,
        ["place.crown_fail"] = Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 25 }),
        ["place.too-wide_pass"] = Job.Clean with { Tape = Stitched.Seated(1270, 300) },
        ["place.too-wide_fail"] = Job.Clean with { Tape = Stitched.Seated(1272, 300) },
        ["place.brim-clearance_pass"] = Job.Clean,
        ["place.brim-clearance_fail"] = Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 9 }),
        ["place.side-seam_pass"] = Job.Clean,
        ["place.side-seam_fail"] = OnWearersLeftFront(760),
        ["place.eyelet_pass"] = Job.Clean,
        ["place.eyelet_fail"] = Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = 30 }),
        ["place.posts_pass"] = Job.Clean,
        ["place.posts_fail"] = Job.Clean with { Frame = Job.Clean.Frame with { PostsXMm = [-45, 45] } },
        ["place.off-center_pass"] = CenteredByOrigin(0),
        ["place.off-center_fail"] = CenteredByOrigin(15),
        ["order.tagline-first_pass"] = Job.Clean with { Tape = Sewn.LineAndBox(lineFirst: true) },
        ["order.tagline-first_fail"] = Job.Clean with { Tape = Sewn.LineAndBox(lineFirst: false) },
        ["order.bottom-up_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Base, Sewn.Middle, Sewn.Top) },
        ["order.bottom-up_fail"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Top, Sewn.Middle, Sewn.Base) },
        ["order.center-out_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Center, Sewn.Right, Sewn.Left) },
        ["order.center-out_fail"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Left, Sewn.Right, Sewn.Center) },
        ["order.not-settled_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Top, Sewn.Middle, Sewn.Base) },
        ["order.not-settled_fail"] = Job.Clean with { Tape = RandomDesign.Of(1440).Draft.ToTape("TEST") },
        ["stitch.short_pass"] = Job.Clean,
        ["stitch.short_fail"] = Drafted(draft => draft.Run(3, new TapePoint(0, 0), new TapePoint(30, 0))),
        ["stitch.long_pass"] = Drafted(draft => draft.Run(70, new TapePoint(0, 0), new TapePoint(70, 0))),
        ["stitch.long_fail"] = Drafted(draft => draft.Run(71, new TapePoint(0, 0), new TapePoint(71, 0))),
        ["stitch.dense_pass"] = Drafted(draft => draft.Grid(4, 4, 60, 60)),
        ["stitch.dense_fail"] = Drafted(draft => draft.Grid(3, 4, 60, 60)),
        ["ticket.threads_pass"] = Colored(2, threads: 2),
        ["ticket.threads_fail"] = Colored(2, threads: 1),
        ["ticket.needles_pass"] = Colored(12, threads: 12),
        ["ticket.needles_fail"] = Colored(13, threads: 13),
        ["ticket.size_pass"] = Expecting(80, 45),
        ["ticket.size_fail"] = Expecting(80, 48),
        ["ticket.style_pass"] = Job.Clean,
        ["ticket.style_fail"] = Unknown("QC-6S"),
        ["ticket.machine_pass"] = Job.Clean,
        ["ticket.machine_fail"] = Job.Clean with { Machine = Job.Clean.Machine with { CapFrames = ["standard-180"] } },
        ["ticket.quantity_pass"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = 49 } },
        ["ticket.quantity_fail"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = 40 } },
        ["ticket.location_pass"] = Job.Clean,
        ["ticket.location_fail"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Location = CapLocation.Visor } },
        ["tape.cut-off_pass"] = Raw(Whole),
        ["tape.cut-off_fail"] = Raw([.. Whole[..^16], .. Whole[^4..]]),
        ["tape.header-counts_pass"] = Raw(Whole),
        ["tape.header-counts_fail"] = Raw(Whole.WithHeader("ST", "7")),
        ["tape.header-extents_pass"] = Raw(Whole),
        ["tape.header-extents_fail"] = Raw(Whole.WithHeader("+X", "7")),
        ["tape.header-colors_pass"] = Raw(Whole),
        ["tape.header-colors_fail"] = Raw(Whole.WithHeader("CO", "3")),
        ["tape.no-end_pass"] = Raw(Whole),
        ["tape.no-end_fail"] = Raw(Whole.WithoutEnd()),
        ["tape.part-record_pass"] = Raw(Whole),
        ["tape.part-record_fail"] = Raw(Whole.WithoutEnd().Then(0)),
        ["tape.after-end_pass"] = Raw(Whole),
        ["tape.after-end_fail"] = Raw(Whole.Then(1, 2, 3)),
        ["tape.empty-block_pass"] = Raw(Whole),
        ["tape.empty-block_fail"] = Raw(RawTape.Of(
            RawTape.Header(8, stops: 2, right: 6), [.. Rights(3), RawTape.Stop, RawTape.Stop, .. Rights(3)])),
        ["tape.repeated-points_pass"] = Raw(Whole),
        ["tape.repeated-points_fail"] = Raw(RawTape.Of(
            RawTape.Header(5, right: 3), [.. Rights(3), RawTape.Left1, RawTape.Left1])),
        ["tape.zero-stitches_pass"] = Raw(Whole),
        ["tape.zero-stitches_fail"] = Raw(RawTape.Of(RawTape.Header(4, right: 3), [.. Rights(3), RawTape.Stitch0])),
        ["tape.unknown-bits_pass"] = Raw(Whole),
        ["tape.unknown-bits_fail"] = Raw(RawTape.Of(
            RawTape.Header(201, right: 200), [.. Rights(200), RawTape.Unknown])),
        ["tape.trims-unclear_pass"] = Raw(Whole),
        ["tape.trims-unclear_fail"] = Raw(RawTape.Of(
            RawTape.Header(7, right: 87), [.. Rights(3), RawTape.JumpRight81, .. Rights(3)])),
    };

    private static byte[] Whole => RawTape.Of(RawTape.Header(300, right: 300), Rights(300));

    /// <summary>A design of our own making.</summary>
    internal static Job Drafted(Func<Draft, Draft> sew) => Job.Clean with { Tape = sew(new Draft()).ToTape("TEST") };

    /// <summary>A design in so many color blocks, of which the ticket names so many.</summary>
    internal static Job Colored(int blocks, int threads) => Job.Clean with
    {
        Tape = Stitched.Colors(blocks),
        Ticket = Job.Clean.Ticket with { Threads = Threads(threads) },
    };

    internal static IReadOnlyList<TicketThread> Threads(int count) =>
        [.. Enumerable.Range(1, count).Select(block => new TicketThread { Block = block, Name = $"Thread {block}" })];

    internal static Job Unknown(string sku) => Job.Clean with
    {
        Style = null,
        Suggestions = ["six-panel-structured-mid", "visor"],
        Ticket = Job.Clean.Ticket with { CapStyle = null, CapSku = sku },
    };

    /// <summary>The middle of the needle points lies so many tape units to the right of the tape's origin.</summary>
    internal static Job CenteredByOrigin(int middle) =>
        (Job.Clean with { Tape = Stitched.Box(middle - 400, 0, middle + 400, 450) })
        .Seating(new TicketSeating { CenterBy = SeatingCenter.Origin });

    internal static Job Expecting(double widthMm, double heightMm) => Job.Clean with
    {
        Ticket = Job.Clean.Ticket with { ExpectedSize = new ExpectedSize(widthMm, heightMm) },
    };

    private static Job OnWearersLeftFront(int width) => Job.Clean with
    {
        Tape = Stitched.Seated(width, 450),
        Ticket = Job.Clean.Ticket with { Location = CapLocation.FrontLeft },
    };

    private static Job Raw(byte[] file) => Job.Clean with { Tape = Stitched.Read(file) };

    private static IEnumerable<byte[]> Rights(int count) => Enumerable.Repeat(RawTape.Right1, count);
}
