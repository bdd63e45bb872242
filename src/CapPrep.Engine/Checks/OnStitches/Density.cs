using CapPrep.Engine.Checks.OnStitches.Holes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>
/// Needle holes so close together that they cut the cloth and break thread. Counted are distinct needle holes per
/// square millimeter, of all layers, in windows of 2 x 2 mm; places where the needle goes in again are one hole. Silent
/// over foam, which is sewn dense on purpose.
/// </summary>
internal static class Density
{
    internal static readonly Check Check = new("stitch.dense", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var map = MapOf(subject, SpanMap.Of(subject));
        var needed = (int)rule.Parameter("windowsAtLeast");
        var neededToHold = (int)rule.Parameter("windowsToHoldAtLeast");
        var spots = new DenseSpots(
            HoleWindow.Passing(map, rule.Limits), rule.Limits, level => level == Severity.Hold ? neededToHold : needed);
        return spots.Find().Select(spot => new Occurrence(PlaceOf(subject, map, spot))
        {
            Measured = spot.Windows.Max(window => window.HolesPerMm2),
            Level = spot.Level,
        });
    }

    /// <summary>The holes of a design, those over foam left out.</summary>
    internal static HoleMap MapOf(Subject subject, SpanMap spans) =>
        HoleMap.Of(subject, spans, point => !subject.Foam.ContainsPoint(point));

    private static string Say(Report report)
    {
        var others = report.WorstFirst.Count - report.AtLevel;
        var worst = $"{Figure.Count(report.AtLevel, "spot has", "spots have up to")} {Figure.Plain(report.Measured, 1)} needle holes per square millimeter; at most {Figure.Plain(report.LimitValue, 1)} are wanted.";
        return others == 0 ? worst : $"{worst} {Figure.Count(others, "more has", "more have")} over {Figure.Plain(report.Mildest, 1)}.";
    }

    private static Place PlaceOf(Subject subject, HoleMap map, DenseSpot spot)
    {
        var keys = spot.Windows.Select(window => window.Key).ToArray();
        var points = PointsIn(map, keys).ToArray();
        return new(PlaceKind.CapFront)
        {
            BoxMm = map.Grid.BoxOf(
                keys.Min(key => key.Column),
                keys.Min(key => key.Row),
                keys.Max(key => key.Column) + HoleWindow.Cells - 1,
                keys.Max(key => key.Row) + HoleWindow.Cells - 1),
            Blocks = [.. points.Select(point => subject.Stitches.Block[point]).Distinct().Order()],
            Stitches = new StitchRange(points.Min() + 1, points.Max() + 1),
        };
    }

    private static IEnumerable<int> PointsIn(HoleMap map, IReadOnlyList<CellKey> windows) =>
        windows.SelectMany(key => HoleWindow.CellsOf(key)).Select(map.At).OfType<HoleCell>().SelectMany(cell => map.PointsIn(cell).ToArray());
}
