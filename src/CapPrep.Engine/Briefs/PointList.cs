using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Briefs;

/// <summary>Makes the points of a brief of what is still open and asks the digitizer for something.</summary>
internal static class PointList
{
    // More nobody works through at once.
    private const int MostPoints = 10;
    private const int MostPlaces = 5;

    /// <summary>Open holds, then open warns, that a digitizer can help.</summary>
    internal static IReadOnlyList<Finding> FindingsFor(IReadOnlyList<Finding> findings) =>
        [.. findings.Where(finding => finding is { State: FindingState.Open, Severity: not Severity.Note, Remedy.Who: Actor.Digitizer })];

    internal static IReadOnlyList<BriefPoint> Of(IReadOnlyList<Finding> asked, Subject job) =>
        [.. asked.Take(MostPoints).Select((finding, index) => Point(finding, index + 1, job))];

    private static BriefPoint Point(Finding finding, int number, Subject job) => new()
    {
        Number = number,
        Finding = finding.Number,
        Rule = finding.Rule,
        MustChange = finding.Severity == Severity.Hold,
        Places = [.. Worst(finding).Select(place => Place(place, job))],
        Count = finding.Count,
        Message = finding.Message,
        Measured = finding.Measured,
        Wanted = finding.Wanted is { } wanted ? new(finding.Limit.Is, wanted.Value, wanted.Unit) : null,
        Why = job.Setup.Rules.Find(finding.Rule)?.Row.Says ?? finding.Message,
        How = finding.Remedy!.Message,
    };

    private static IEnumerable<Place> Worst(Finding finding)
    {
        var sign = finding.Limit.Is == LimitIs.AtLeast ? 1 : -1;
        return finding.Places
            .OrderBy(place => sign * (place.Measured?.Value ?? 0))
            .Take(MostPlaces)
            .InReadingOrder();
    }

    private static BriefPlace Place(Place place, Subject job) => new(
        place.Mark, Words(place, job), place.BoxMm, place.Blocks, place.Stitches, place.Measured);

    private static string Words(Place place, Subject job) => place.BoxMm is { } box && job.IsSeated
        ? PlaceWords.Of(box, job.Seated.Box.ToMillimeters().Bottom, job.Setup.Style?.CenterSeam is not null && job.LiesOnFront)
        : "";
}
