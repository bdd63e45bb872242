using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>
/// The stop at which fabric or a patch is laid, between the line that shows its place and what holds it. It is there
/// when one shape has it, when the ticket marks it, or when a stop of one thread waits for something.
/// </summary>
internal static class AppliqueStop
{
    internal static readonly Check Check = Check.Telling("applique.no-stop", Needs.SeatedDesign, (subject, _) => Find(subject));

    private static IEnumerable<Occurrence> Find(Subject subject)
    {
        AppliqueShape[] held = [.. subject.AppliqueShapes.Where(shape => shape.IsHeldAtOnce)];
        if (subject.AppliqueShapes.Any(shape => shape.HasStop) || IsMarked(subject, held))
            return [];
        if (held.Length > 0)
            return held.Select(shape => At(subject.PlaceOf(shape.Placement.Interval.First, shape.Along[^1].Interval.Last), Severity.Hold, "No stop lies between placement line and tack-down. Nobody could lay the fabric."));
        return subject.Stitches.Blocks == 1 ? [At(subject.WholeDesign(), Severity.Hold, "The tape has no stop. Nobody could lay the fabric.")]
            : subject.DeliberateStops.Count == 0 ? [At(subject.WholeDesign(), Severity.Warn, "No stop was found between a placement line and a tack-down. Mark it in the ticket.")]
            : [];
    }

    /// <summary>A mark before the line that shows the place does not help: nobody knows yet where to lay the fabric.</summary>
    private static bool IsMarked(Subject subject, AppliqueShape[] held) =>
        subject.Ticket.Received.Threads?.Any(thread =>
            thread.Action == StopAction.PlacePatch && thread.Block <= subject.Stitches.Blocks
            && (held.Length == 0 || held.Any(shape => thread.Block > shape.Placement.Block))) == true;

    private static Occurrence At(Place place, Severity level, string text) => new(place) { Level = level, Text = text };
}
