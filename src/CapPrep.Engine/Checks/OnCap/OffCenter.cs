using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>
/// Middle of the needle points against the wanted center, for designs that the ticket seats by a point of the tape:
/// seated by the box or by weight, a design is on center by construction. Silent where the ticket asks for an offset.
/// </summary>
internal static class OffCenter
{
    internal static readonly Check Check = new("place.off-center", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule) =>
        IsJudged(subject)
            ? [new Occurrence(subject.WholeDesign()) { Measured = Math.Abs(MiddleMm(subject)), Text = Side(MiddleMm(subject)) }]
            : [];

    private static bool IsJudged(Subject subject) =>
        subject.Seated.CenterBy is SeatingCenter.Origin or SeatingCenter.X
        && subject.Ticket.Received.Seating?.OffsetRightMm is null;

    private static double MiddleMm(Subject subject) =>
        (subject.Seated.CenteredBox.Left + subject.Seated.CenteredBox.Right) / (2.0 * Tenths.PerMillimeter);

    private static string Side(double middle) => middle > 0 ? "viewer's right" : "viewer's left";

    private static string Say(Report report) =>
        $"The middle of the design lies {Figure.Mm(report.Measured)} to the {report.Worst.Text} of the wanted center.";
}
