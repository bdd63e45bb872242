namespace CapPrep.Engine.Checks.OnCap;

/// <summary>Height and width of the design against what the zone takes.</summary>
internal static class DesignSize
{
    internal static readonly Check TooTall = new(
        "place.too-tall",
        Needs.SeatedDesign,
        (subject, _) => [Whole(subject, subject.Seated.Box.ToMillimeters().Height)],
        report => $"The design is {Figure.Mm(report.Measured)} tall; this cap takes {Figure.Mm(report.LimitValue)} there.");

    internal static readonly Check TooWide = new(
        "place.too-wide",
        Needs.SeatedDesign,
        (subject, _) => [Whole(subject, subject.Seated.Box.ToMillimeters().Width)],
        report => $"The design is {Figure.Mm(report.Measured)} wide; this cap takes {Figure.Mm(report.LimitValue)} there.");

    private static Occurrence Whole(Subject subject, double measured) =>
        new(subject.WholeDesign()) { Measured = measured };
}
