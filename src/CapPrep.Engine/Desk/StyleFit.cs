using CapPrep.Engine.Checks;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Desk;

/// <summary>Which other cap styles take a design as it is.</summary>
internal static class StyleFit
{
    /// <summary>By id; only styles that the job's own frame is made for.</summary>
    internal static IReadOnlyList<OtherStyle> Of(Subject job) =>
        [.. job.Setup.OtherStyles
            .Where(style => style.Id != job.Setup.Style?.Id && IsFor(style, job) && Takes(style, job))
            .OrderBy(style => style.Id, StringComparer.Ordinal)
            .Select(style => new OtherStyle(style.Id, style.Name))];

    private static bool IsFor(CapStyle style, Subject job) =>
        (job.Setup.Frame.ForStyles.Count == 0 || job.Setup.Frame.ForStyles.Contains(style.Id))
        && style.Techniques.Contains(job.Ticket.Technique);

    private static bool Takes(CapStyle style, Subject job)
    {
        var setup = job.Setup with { Style = style };
        return Seater.Seat(job.Stitches, job.Ticket, setup) is { } seated
            && Inspector.InspectSize(job.On(setup, seated)).All(finding => finding.Severity == Severity.Note);
    }
}
