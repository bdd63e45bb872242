using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>Foam belongs on the front: sides, backs and visors bend it or leave it no room.</summary>
internal static class FoamPlace
{
    internal static readonly Check Style = Check.Telling("foam.style", Needs.TapeAndTicket, (subject, _) => IsSaid(subject) && IsOff(subject.Ticket.Location)
        ? [new Occurrence(Subject.InTicket("/location")) { Level = Severity.Warn, Text = $"Foam work is ordered {Spoken.Of(subject.Ticket.Location)}; it belongs on the front." }]
        : []);

    /// <summary>The ticket speaks of foam.</summary>
    internal static bool IsSaid(Subject subject) =>
        subject.Ticket.Technique is Technique.Foam or Technique.PartFoam || HasFoamThread(subject);

    internal static bool HasFoamThread(Subject subject) =>
        ThreadList.Of(subject.Ticket.Received).Any(list => list.Threads.Any(thread => thread.Foam == true));

    private static bool IsOff(CapLocation location) =>
        location is CapLocation.Left or CapLocation.Right or CapLocation.Back or CapLocation.Visor;
}
