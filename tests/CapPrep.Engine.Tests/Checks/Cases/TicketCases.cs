using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class TicketCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["ticket.threads_pass"] = RuleCases.Colored(2, threads: 2),
        ["ticket.threads_fail"] = RuleCases.Colored(2, threads: 1),
        ["ticket.needles_pass"] = RuleCases.Colored(12, threads: 12),
        ["ticket.needles_fail"] = RuleCases.Colored(13, threads: 13),
        ["ticket.size_pass"] = RuleCases.Expecting(80, 45),
        ["ticket.size_fail"] = RuleCases.Expecting(80, 48),
        ["ticket.contrast_pass"] = OnCapsOf("#FFFFFF"),
        ["ticket.contrast_fail"] = OnCapsOf("#1F2F66"),
        ["ticket.style_pass"] = Job.Clean,
        ["ticket.style_fail"] = RuleCases.Unknown("QC-6S"),
        ["ticket.machine_pass"] = Job.Clean,
        ["ticket.machine_fail"] = Job.Clean with { Machine = Job.Clean.Machine with { CapFrames = ["standard-180"] } },
        ["ticket.quantity_pass"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = 49 } },
        ["ticket.quantity_fail"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Blanks = 40 } },
        ["ticket.location_pass"] = Job.Clean,
        ["ticket.location_fail"] = Job.Clean with { Ticket = Job.Clean.Ticket with { Location = CapLocation.Visor } },
    };

    private static Job OnCapsOf(string color) =>
        Job.Clean with { Ticket = Job.Clean.Ticket with { CapColor = new NamedColor(null, color) } };
}
