using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Spots of evenly spread needle holes.</summary>
internal static class Grids
{
    /// <summary>
    /// Holes so many tape units apart, sewn to and fro from the lower left corner: 100 / (dx dy) per square millimeter.
    /// </summary>
    internal static Draft Grid(this Draft draft, int dx, int dy, int width, int height, int left = 0, int bottom = 0)
    {
        for (var row = 0; row * dy < height; row++)
        {
            var columns = Enumerable.Range(0, (width + dx - 1) / dx);
            draft.Stitches((row % 2 == 0 ? columns : columns.Reverse()).Select(column => new TapePoint(left + (column * dx), bottom + (row * dy))));
        }

        return draft;
    }
}
