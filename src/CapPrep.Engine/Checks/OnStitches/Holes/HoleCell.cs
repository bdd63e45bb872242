namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>
/// The needle holes of one cell. A hole met again by the needle stays one hole, to the tape unit; one on the line
/// between two cells is half in each. Counted in quarters of a hole.
/// </summary>
/// <param name="Key">Which cell.</param>
/// <param name="Quarters">All holes.</param>
/// <param name="QuartersButTies">Those that not only ties made.</param>
/// <param name="FirstElement">The first element sewn there.</param>
/// <param name="LastElement">The last one.</param>
/// <param name="Start">Its first penetration in the list of the map.</param>
/// <param name="Count">How many penetrations.</param>
internal readonly record struct HoleCell(
    CellKey Key, int Quarters, int QuartersButTies, int FirstElement, int LastElement, int Start, int Count);

/// <summary>Which places of a cell hold a hole: 11 by 11 tape units, its edges included.</summary>
internal struct HoleMask
{
    private const int Units = (CellGrid.Side / 2) + 1;

    private UInt128 _holes;
    private UInt128 _onSide;
    private UInt128 _onLevel;

    /// <summary>Makes a hole at so many half tape units from the lower left corner.</summary>
    internal void Add(int x, int y)
    {
        var bit = UInt128.One << ((y / 2 * Units) + (x / 2));
        _holes |= bit;
        if (x is 0 or CellGrid.Side)
            _onSide |= bit;
        if (y is 0 or CellGrid.Side)
            _onLevel |= bit;
    }

    /// <summary>Holes inside count 4, on an edge 2, in a corner 1.</summary>
    internal readonly int Quarters =>
        (4 * Count(_holes)) - (2 * Count(_onSide)) - (2 * Count(_onLevel)) + Count(_onSide & _onLevel);

    private static int Count(UInt128 bits) => (int)UInt128.PopCount(bits);
}
