using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>
/// A window of 2 x 2 mm: four cells. Windows begin at every whole millimeter from the middle of the design.
/// </summary>
/// <param name="Key">Its lower left cell.</param>
/// <param name="HolesPerMm2">Distinct needle holes per square millimeter.</param>
internal readonly record struct HoleWindow(CellKey Key, double HolesPerMm2)
{
    /// <summary>Side of a window in cells.</summary>
    internal const int Cells = 2;

    private const double Quarters = 4;

    /// <summary>
    /// The window at a cell, of all layers. Where all of it is one element, ties do not count: they lie on top of each
    /// other on purpose.
    /// </summary>
    internal static HoleWindow At(HoleMap map, CellKey key)
    {
        var (all, butTies, first, last) = (0, 0, int.MaxValue, int.MinValue);
        foreach (var part in CellsOf(key))
        {
            if (map.At(part) is not { } cell)
                continue;
            (all, butTies) = (all + cell.Quarters, butTies + cell.QuartersButTies);
            (first, last) = (Math.Min(first, cell.FirstElement), Math.Max(last, cell.LastElement));
        }

        return new(key, (first < last ? all : butTies) / Quarters / (Cells * Cells));
    }

    /// <summary>The windows that pass a limit, sorted. One that does holds a cell that does, since it is their mean.</summary>
    internal static IReadOnlyList<HoleWindow> Passing(HoleMap map, Limits limits)
    {
        var windows = map.Cells
            .Where(cell => limits.PassedBy(cell.Quarters / Quarters) is not null)
            .SelectMany(cell => Around(cell.Key))
            .OrderBy(key => key.Packed)
            .ToArray();
        return
        [
            .. windows
                .Where((key, i) => i == 0 || key != windows[i - 1])
                .Select(key => At(map, key))
                .Where(window => limits.PassedBy(window.HolesPerMm2) is not null),
        ];
    }

    /// <summary>Holes per square millimeter in the densest window that holds a point.</summary>
    internal static double Densest(HoleMap map, TapePoint point) => map.Grid.CellsOf(point)
        .SelectMany(cell => Around(cell))
        .Max(key => At(map, key).HolesPerMm2);

    /// <summary>The four cells of the window at a cell.</summary>
    internal static IEnumerable<CellKey> CellsOf(CellKey window) =>
        Enumerable.Range(0, Cells * Cells).Select(part => window.Beside(part / Cells, part % Cells));

    /// <summary>The four windows that hold a cell.</summary>
    private static IEnumerable<CellKey> Around(CellKey cell) =>
        Enumerable.Range(0, Cells * Cells).Select(part => cell.Beside(-(part / Cells), -(part % Cells)));
}
