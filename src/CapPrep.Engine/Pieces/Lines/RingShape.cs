using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces.Lines;

/// <summary>A stretch of a line with other lines beside it.</summary>
/// <param name="Line">The line it is a part of.</param>
/// <param name="Interval">Its penetrations.</param>
/// <param name="Cover">Cells under its thread.</param>
internal sealed record RingStretch(Section Line, Interval Interval, Cover Cover);

/// <summary>
/// Stretches of lines that lie beside each other, as one shape. They are ring lines when no cloth shows between them.
/// The limits were found by looking at real designs (house).
/// </summary>
internal sealed class RingShape
{
    // Fewer are a scribble.
    private const int FewestPenetrations = 20;

    // The area over the length of the thread: at most 0.7 mm from line to line. Sure from 10 % inside.
    private const int WidestSpacing = 70;
    private const int ClearSpacing = 63;

    // A third of the stitches have a line on both sides, and a fifth of the area is 0.5 mm inside. Sure: a half, a third.
    private const int LeastInside = 33;
    private const int ClearInside = 50;
    private const int LeastCore = 20;
    private const int ClearCore = 33;

    private readonly IReadOnlyList<RingStretch> _stretches;
    private readonly Cover _area;
    private readonly long _length;
    private readonly int _inside;
    private readonly int _core;

    public RingShape(StitchSequence stitches, LinesBeside beside, IReadOnlyList<RingStretch> stretches)
    {
        _stretches = stretches;
        _area = Cover.Of(stretches.Select(stretch => stretch.Cover)).Filled();
        _length = stretches.Sum(stretch => stitches.LengthOf(stretch.Interval));
        int[] ends = [.. stretches.SelectMany(stretch => Enumerable.Range(stretch.Interval.First + 1, stretch.Interval.Count - 1))];
        _inside = 100 * ends.Count(i => beside.Sides(i) == 2) / Math.Max(1, ends.Length);
        _core = 100 * _area.Shrunk().Shrunk().Area / _area.Area;
    }

    public bool IsRings =>
        _stretches.Sum(stretch => stretch.Interval.Count) >= FewestPenetrations
        && IsNearer(WidestSpacing) && _inside >= LeastInside && _core >= LeastCore;

    private bool IsSure => IsNearer(ClearSpacing) && _inside >= ClearInside && _core >= ClearCore;

    /// <summary>Its stretches as sections that hide the cloth between them, with the line each is a part of.</summary>
    public IEnumerable<(Section Line, Section Rings)> Sections(StitchSequence stitches) =>
        _stretches.Select(stretch => (stretch.Line, new Section(stitches, stretch.Line.Strand, stretch.Interval, StitchClass.DenseRunning, null)
        {
            IsDoubtful = !IsSure,
            Cover = stretch.Cover,
            Rings = _area,
            Blanket = stretch.Cover.Grown().Common(_area),
        }));

    private bool IsNearer(int hundredths) =>
        (long)_area.Area * Fine.PerMillimeter * 100 < hundredths * _length * Cover.CellsPerSquareMillimeter;
}
