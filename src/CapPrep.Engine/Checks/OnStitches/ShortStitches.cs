using CapPrep.Engine.Checks.OnStitches.Holes;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>
/// Places where many needle points of short stitches lie together: thread breaks and hard spots. Ties are short on
/// purpose, as is a single short stitch from one row to the next at its turning end. In satin and fill, short stitches
/// belong to the inner side of curves, and count only where the holes are dense.
/// </summary>
internal static class ShortStitches
{
    internal static readonly Check Check = new("stitch.short", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var steps = new ShortSteps(subject, rule.Parameter("stitchBelowMm"), rule.Parameter("tinyStitchBelowMm"));
        var circleMm = rule.Parameter("circleMm");
        var text = $"stitches under {Figure.Mm(rule.Parameter("stitchBelowMm"))} lie inside a circle of {Figure.Mm(circleMm)}.";
        foreach (var place in Places(subject, rule, steps, circleMm))
            yield return place with { Text = text };
        if (steps.TinyShare > rule.Parameter("tinyShareAtMost"))
            yield return OfTheWhole(subject, rule, steps.TinyShare);
    }

    private static IEnumerable<Occurrence> Places(Subject subject, RuleInForce rule, ShortSteps steps, double circleMm)
    {
        var (curveHoles, warnHoles) = (rule.Parameter("curveHolesPerMm2"), rule.Parameter("warnAboveHolesPerMm2"));
        var points = steps.Points;
        var counts = Crowding.Of(subject.Points, points, Tenths.FromMillimeters(circleMm / 2).Value);
        var crowded = Enumerable.Range(0, points.Count).Where(i => rule.Limits.PassedBy(counts[i]) is not null).ToArray();
        if (crowded.Length == 0)
            return [];
        var map = Density.MapOf(subject, steps.Spans);
        var found = crowded
            .Select(i => new CrowdedPoint(points[i], counts[i], HoleWindow.Densest(map, subject.Points.At(points[i]))))
            .Where(point => !steps.IsInRows(point.Point) || point.HolesPerMm2 >= curveHoles)
            .ToDictionary(point => point.Point);
        return StitchRuns.Of(crowded.Select(i => points[i]).Where(found.ContainsKey))
            .Select(run => PlaceOf(subject, rule.Limits, [.. run.Select(point => found[point])], warnHoles, circleMm / 2));
    }

    private static Occurrence PlaceOf(
        Subject subject, Limits limits, IReadOnlyList<CrowdedPoint> run, double warnHoles, double reachMm)
    {
        var most = run.Max(point => point.Count);
        var bound = run.Max(point => point.HolesPerMm2) > warnHoles ? Severity.Hold : Severity.Note;
        var passed = limits.PassedBy(most)!.Level;
        var place = subject.PlaceOf(run[0].Point, run[^1].Point);
        return new(place with { BoxMm = Around(place.BoxMm!.Value, reachMm) })
        {
            Measured = most,
            Level = passed < bound ? passed : bound,
        };
    }

    private static BoxMm Around(BoxMm box, double reachMm) =>
        new(box.Left - reachMm, box.Bottom - reachMm, box.Right + reachMm, box.Top + reachMm);

    private static Occurrence OfTheWhole(Subject subject, RuleInForce rule, double share) => new(subject.WholeDesign())
    {
        Level = Severity.Note,
        Text = $"{Figure.Plain(share * 100, 1)} % of all stitches are under {Figure.Mm(rule.Parameter("tinyStitchBelowMm"))}.",
    };

    private static string Say(Report report)
    {
        var places = report.WorstFirst.Where(one => one.Measured is not null).ToArray();
        var whole = report.WorstFirst.Where(one => one.Measured is null).Select(one => one.Text);
        return string.Join(' ', places.Length == 0 ? whole : whole.Prepend(
            $"At {Figure.Count(places.Length, "place")} up to {Figure.Plain(places.Max(one => one.Measured!.Value), 0)} needle points of {places[0].Text}"));
    }

    private readonly record struct CrowdedPoint(int Point, int Count, double HolesPerMm2);
}
