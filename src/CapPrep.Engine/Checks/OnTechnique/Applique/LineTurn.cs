using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>An open line or zigzag of one color block: once around when it closes, else from end to end.</summary>
/// <param name="Run">The connected line it is a turn of, from 0.</param>
/// <param name="Interval">Its penetrations.</param>
/// <param name="Block">Received color block, from 1.</param>
/// <param name="IsClosed">A line that ends where it began and is large enough to lay fabric on.</param>
/// <param name="IsLine">Running stitches, no zigzag.</param>
/// <param name="Box">Around its penetrations.</param>
/// <param name="Cover">Cells under its thread.</param>
internal sealed record LineTurn(int Run, Interval Interval, int Block, bool IsClosed, bool IsLine, Box Box, Cover Cover)
{
    // House: so near, 1.5 mm, a line follows another.
    private const int NearCells = 6;

    // Tape units: a line that goes farther away than this is another line.
    private const int FarAway = 60;

    private Cover? _near;

    /// <summary>
    /// The other runs along it: at least three fifths of the other lies near it, and it lies near two fifths of this
    /// one. A zigzag may reach farther inward.
    /// </summary>
    internal bool IsFollowedBy(LineTurn other) =>
        IsAround(other) && 10 * Near.Shared(other.Cover) >= 6 * other.Cover.Area && 10 * other.Near.Shared(Cover) >= 4 * Cover.Area;

    /// <summary>Length of this line that lies far from another, mm; 0 for a gap that is hardly to be seen.</summary>
    internal double FarFromMm(LineTurn other)
    {
        var cells = Cover.Area - other.Near.Shared(Cover);
        return cells <= NearCells ? 0 : (cells + (2 * NearCells)) / (double)Pieces.Cover.CellsPerMillimeter;
    }

    private bool IsAround(LineTurn other) =>
        Box.Grown(FarAway) is var around && around.Contains(new(other.Box.Left, other.Box.Bottom)) && around.Contains(new(other.Box.Right, other.Box.Top));

    private Cover Near => _near ??= Grown(NearCells);

    private Cover Grown(int cells)
    {
        var grown = Cover;
        for (var i = 0; i < cells; i++)
            grown = grown.Grown();
        return grown;
    }
}
