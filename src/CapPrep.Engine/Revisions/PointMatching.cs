using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Revisions;

/// <summary>Follows the points of the job before by rule and place.</summary>
/// <param name="accepted">What people let pass: gone from the list, and yet not solved.</param>
/// <param name="shiftMm">What lay at a place of the cap then lies so much farther now.</param>
internal sealed class PointMatching(
    IReadOnlyList<EarlierFinding> before, IReadOnlyList<Finding> now, IReadOnlyList<AcceptedFinding> accepted, PointMm shiftMm)
{
    /// <summary>Two boxes that share so much of the smaller one are one place.</summary>
    private const double SamePlace = 0.5;

    /// <summary>A line, or a single needle point, is a place of this size: nobody mends less, mm (house).</summary>
    private const double SmallestPlace = 2;

    /// <summary>The order of sewing is one point, wherever it shows.</summary>
    private const string OrderGroup = "order.";

    private readonly Finding[] _now = [.. now.Where(finding => finding is { State: FindingState.Open, Severity: not Severity.Note })];

    internal IReadOnlyList<RevisedPoint> Solved() =>
    [
        .. before
            .Select(finding => Part(finding, finding.Places.Where(place => !IsMet(finding.Rule, place)).ToArray()))
            .OfType<RevisedPoint>(),
    ];

    internal IReadOnlyList<RevisedPoint> StillOpen() =>
        [.. _now.Select(finding => Part(finding, [.. finding.Places.Where(place => Earlier(finding.Rule, place) is not null)], isNew: false)).OfType<RevisedPoint>()];

    internal IReadOnlyList<RevisedPoint> New() =>
        [.. _now.Select(finding => Part(finding, [.. finding.Places.Where(place => Earlier(finding.Rule, place) is null)], isNew: true)).OfType<RevisedPoint>()];

    private bool IsMet(string rule, Place then) =>
        _now.Concat(accepted.Select(one => one.Finding)).Any(finding => finding.Rule == rule && finding.Places.Any(place => IsSame(rule, then, place)));

    /// <summary>A list that was cut off may have held it: then it is not called new.</summary>
    private EarlierFinding? Earlier(string rule, Place place) => before.FirstOrDefault(finding =>
        finding.Rule == rule && (finding.Count > finding.Places.Count || finding.Places.Any(then => IsSame(rule, then, place))));

    private RevisedPoint? Part(EarlierFinding finding, Place[] places) => places.Length == 0
        ? null
        : new(finding.Rule, finding.Severity, finding.Message, finding.Number, null, Boxes(places.Select(Shifted)));

    private RevisedPoint? Part(Finding finding, Place[] places, bool isNew) => places.Length == 0
        ? null
        : new(finding.Rule, finding.Severity, finding.Message, isNew ? null : Earlier(finding.Rule, places[0])!.Number, finding.Number, Boxes(places));

    private static IReadOnlyList<BoxMm> Boxes(IEnumerable<Place> places) => [.. places.Select(place => place.BoxMm).OfType<BoxMm>()];

    private Place Shifted(Place then) => then.BoxMm is { } box
        ? then with { BoxMm = new(Moved(box.Left, shiftMm.X), Moved(box.Bottom, shiftMm.Y), Moved(box.Right, shiftMm.X), Moved(box.Top, shiftMm.Y)) }
        : then;

    private static double Moved(double value, double by) => Math.Round(value + by, 2, MidpointRounding.AwayFromZero);

    private bool IsSame(string rule, Place then, Place place)
    {
        if (rule.StartsWith(OrderGroup, StringComparison.Ordinal))
            return true;
        if (then.At != place.At)
            return false;
        return (Shifted(then).BoxMm, place.BoxMm) is ({ } one, { } other)
            ? Overlap(AtLeast(one), AtLeast(other)) >= SamePlace
            : then.Pointer == place.Pointer;
    }

    /// <summary>Share of the smaller box that lies in the other one.</summary>
    private static double Overlap(BoxMm one, BoxMm other)
    {
        var width = Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left);
        var height = Math.Min(one.Top, other.Top) - Math.Max(one.Bottom, other.Bottom);
        return width <= 0 || height <= 0 ? 0 : width * height / Math.Min(one.Width * one.Height, other.Width * other.Height);
    }

    private static BoxMm AtLeast(BoxMm box)
    {
        var (x, y) = (Math.Max(0, SmallestPlace - box.Width) / 2, Math.Max(0, SmallestPlace - box.Height) / 2);
        return new(box.Left - x, box.Bottom - y, box.Right + x, box.Top + y);
    }
}
