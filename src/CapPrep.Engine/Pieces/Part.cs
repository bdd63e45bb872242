using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>An element in the making: consecutive sections of one strand.</summary>
internal sealed class Part
{
    // Visible stitches of another kind, up to this many, do not make an area something else.
    private const int FewPenetrations = 8;

    // Smaller than either is no element: 8 penetrations, 3 mm2.
    private const int FewestPenetrations = 8;
    private const int LeastArea = 3 * Cover.CellsPerSquareMillimeter;

    public Part(StitchSequence stitches, IReadOnlyList<Section> sections)
    {
        Sections = sections;
        Interval = new(sections[0].Interval.First, sections[^1].Interval.Last);
        Box = stitches.BoxOf(Interval);
        Kind = KindOf(sections);
        Axis = sections.Where(section => KindOf(section) == Kind).Select(section => section.Rows?.Axis ?? Axis.None)
            .Aggregate(Axis.None, (sum, axis) => sum.With(axis));
        IsPure = Visible(sections).All(section => KindOf(section) == Kind || section.Interval.Count < FewPenetrations);
    }

    public IReadOnlyList<Section> Sections { get; }

    public Interval Interval { get; }

    public Box Box { get; }

    public ElementKind Kind { get; }

    public Axis Axis { get; }

    /// <summary>Nothing visible in it is of another kind.</summary>
    public bool IsPure { get; }

    public Cover Cover { get; set; } = Cover.None;

    public bool IsSmall => Interval.Count < FewestPenetrations || Cover.Area < LeastArea;

    private static IEnumerable<Section> Visible(IEnumerable<Section> sections) =>
        sections.Where(section => section.Role == SpanRole.Visible);

    /// <summary>The kind with the most visible penetrations, among equals the first in the list of kinds.</summary>
    private static ElementKind KindOf(IReadOnlyList<Section> sections)
    {
        var kinds = Visible(sections)
            .GroupBy(KindOf, (kind, alike) => (Kind: kind, Penetrations: alike.Sum(section => section.Interval.Count)))
            .OrderByDescending(kind => kind.Penetrations).ThenBy(kind => kind.Kind)
            .ToList();
        return kinds.Count > 0 ? kinds[0].Kind
            : sections.Any(section => section.Role is SpanRole.Underlay or SpanRole.HiddenTravel) ? ElementKind.Underlay
            : ElementKind.Running;
    }

    private static ElementKind KindOf(Section section) => section.Class switch
    {
        StitchClass.Satin => ElementKind.Satin,
        StitchClass.Fill => ElementKind.Fill,
        StitchClass.OpenZigzag or StitchClass.OpenFill => ElementKind.OpenZigzag,
        StitchClass.Retraced => ElementKind.Retraced,
        StitchClass.DenseRunning => ElementKind.DenseRunning,
        StitchClass.Pattern => ElementKind.Pattern,
        _ => ElementKind.Running,
    };
}
