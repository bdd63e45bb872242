using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class PlaceCases
{
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
        ["place.off-center_pass"] = RuleCases.CenteredByOrigin(0),
        ["place.off-center_fail"] = RuleCases.CenteredByOrigin(15),
        ["place.turns-away_pass"] = Job.Clean,
        ["place.turns-away_fail"] = Job.Clean with { Tape = Stitched.Seated(1200, 300) },
    };

    private static Job OnWearersLeftFront(int width) => Job.Clean with
    {
        Tape = Stitched.Seated(width, 450),
        Ticket = Job.Clean.Ticket with { Location = CapLocation.FrontLeft },
    };
}
