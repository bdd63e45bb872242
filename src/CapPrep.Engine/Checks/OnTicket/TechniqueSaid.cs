using CapPrep.Engine.Checks.OnTechnique.Foam;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>
/// The technique of the ticket against its location and its own threads (hold), the cap style, and the stitches (warn): what
/// is sewn like foam work and not called so is told once, since the limits of flat work say nothing there.
/// </summary>
internal static class TechniqueSaid
{
    internal static readonly Check Check = Check.Telling("ticket.technique", Needs.TapeAndTicket, (subject, _) => Find(subject));

    private static IEnumerable<Occurrence> Find(Subject subject)
    {
        var (technique, style) = (subject.Ticket.Technique, subject.Setup.Style);
        if (FoamPlace.IsSaid(subject) && subject.Ticket.Location is CapLocation.Left or CapLocation.Right)
            yield return Here(Severity.Hold, $"Foam work cannot be sewn {Spoken.Of(subject.Ticket.Location)}.");
        if (style is not null && !Takes(style, technique))
            yield return Here(Severity.Warn, $"Cap style {style.Id} does not take {Named(technique)}.");
        if (subject.Ticket.Received.Technique == Technique.Flat && FoamPlace.IsSaid(subject))
            yield return Here(Severity.Hold, "The ticket says flat, and marks threads as sewn over foam.");
        if (technique == Technique.PartFoam && !FoamPlace.HasFoamThread(subject))
            yield return Here(Severity.Warn, "The ticket says part foam, and marks no thread as sewn over foam.");
        if (subject.Foam.IsGuessed)
            yield return Here(Severity.Warn, "This looks like foam work; say technique foam. Limits for flat work were left out there.");
    }

    /// <summary>Every style takes flat work, and one that takes foam takes it in part, too.</summary>
    private static bool Takes(CapStyle style, Technique technique) =>
        technique == Technique.Flat || style.Techniques.Contains(technique) || (technique == Technique.PartFoam && style.Techniques.Contains(Technique.Foam));

    private static string Named(Technique technique) => technique switch
    {
        Technique.Foam => "foam work",
        Technique.PartFoam => "part foam work",
        Technique.Applique => "applique",
        Technique.Patch => "patches",
        _ => throw new EngineFaultException($"No word for the technique {technique}."),
    };

    private static Occurrence Here(Severity level, string text) => new(Subject.InTicket("/technique")) { Level = level, Text = text };
}
