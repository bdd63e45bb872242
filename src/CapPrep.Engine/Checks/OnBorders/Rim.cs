using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>The outermost cells of an area, at its holes too; gaps between its rows are no holes.</summary>
internal sealed class Rim
{
    // So near to the rim a line follows it, cells: 0.75 mm (house).
    private const int Near = 3;

    // Gaps of up to twice so many cells are no holes: 1 mm.
    private const int Gap = 2;

    private readonly Cover _whole;
    private readonly Cover _inner;
    private readonly Lazy<(Cover Outside, Cover Inside)> _strip;

    /// <param name="area">As <see cref="Closed"/> makes it.</param>
    internal Rim(Cover area)
    {
        (_whole, _inner) = (area, area.Shrunk());
        _strip = new(() => (Grown(area, Near), Shrunk(area, Near)), LazyThreadSafetyMode.None);
    }

    /// <summary>How many cells it has.</summary>
    internal int Cells => _whole.Area - _inner.Area;

    /// <summary>How many of them at least one cover hides.</summary>
    internal int HiddenBy(IReadOnlyCollection<Cover> covers) => _whole.SharedWithAny(covers) - _inner.SharedWithAny(covers);

    /// <summary>A needle point lies within 0.75 mm of it, inside or outside.</summary>
    internal bool IsNear(TapePoint at) => _strip.Value.Outside.Contains(at) && !_strip.Value.Inside.Contains(at);

    /// <summary>What a line takes of the cloth beside it, as far as it may miss the rim.</summary>
    internal static Cover Beside(Cover line) => Grown(line, Near);

    /// <summary>An area with the gaps between its rows filled.</summary>
    internal static Cover Closed(Cover area) => Shrunk(Grown(area, Gap), Gap);

    internal static Cover Grown(Cover cover, int cells)
    {
        for (var i = 0; i < cells; i++)
            cover = cover.Grown();
        return cover;
    }

    private static Cover Shrunk(Cover cover, int cells)
    {
        for (var i = 0; i < cells; i++)
            cover = cover.Shrunk();
        return cover;
    }
}
