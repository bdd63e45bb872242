using CapPrep.Engine.Drafting;
using CapPrep.Engine.Tests.Checks.Cases;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks;

/// <summary>For every rule one job at which it is silent and one at which it speaks, by name.</summary>
internal static class RuleCases
{
    internal const string Pass = "_pass";
    internal const string Fail = "_fail";

    internal static readonly IReadOnlyDictionary<string, Job> All = new[]
    {
        PlaceCases.All,
        OrderCases.All,
        BorderCases.All,
        SeamCases.All,
        TechniqueCases.All,
        StitchCases.All,
        LetteringCases.All,
        TicketCases.All,
        TapeCases.All,
    }.SelectMany(cases => cases).ToDictionary();

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
}
