using System.Numerics;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>Thread in one cell of 2 mm: column and row from seam and brim seam, and how many of its 64 small cells.</summary>
internal readonly record struct MassCell(int X, int Y, int Mass);

/// <summary>
/// Where the thread of an element lies on the cap: cells of 2 mm that begin at the center seam and at the brim seam,
/// with the covered part of each. Lines count one small cell wider on every side than their thread.
/// </summary>
internal sealed class MassMap
{
    // Small cells are 2.5 tape units wide; their middles are counted in quarters of a tape unit to stay whole.
    private const int QuartersPerSmallCell = 10;
    private const int QuartersPerCell = 80;

    private readonly int _left;
    private readonly int _right;

    private MassMap(MassCell[] cells)
    {
        Cells = cells;
        (_left, _right) = cells.Length == 0 ? (0, 0) : (cells.Min(cell => cell.X), cells.Max(cell => cell.X));
        Total = cells.Sum(cell => (long)cell.Mass);
    }

    /// <summary>Row by row from the brim up, in each from left to right.</summary>
    internal IReadOnlyList<MassCell> Cells { get; }

    /// <summary>Small cells in all.</summary>
    internal long Total { get; }

    /// <summary>Nothing of the other reaches beyond its box.</summary>
    internal bool IsAround(MassMap other) =>
        _left <= other._left && _right >= other._right && Cells[0].Y <= other.Cells[0].Y && Cells[^1].Y >= other.Cells[^1].Y;

    internal static MassMap Of(Element element, Placement placement) =>
        Of(element.Cover, placement, isLine: element.Kind is ElementKind.Running or ElementKind.Retraced);

    internal static MassMap Of(Cover cover, Placement placement, bool isLine)
    {
        var sums = new Dictionary<(int Y, int X), int>();
        var margin = isLine ? 1 : 0;
        for (var row = cover.FirstRow - margin; row < cover.FirstRow + cover.Rows + margin; row++)
        {
            var bits = isLine ? Widened(cover, row) : cover.Row(row).ToArray();
            var first = isLine ? cover.FirstColumn - 64 : cover.FirstColumn;
            var y = CellOf(row, cover.Grid.Bottom, placement.Offset.Y, placement.IsTurned);
            for (var word = 0; word < bits.Length; word++)
            {
                for (var rest = bits[word]; rest != 0; rest &= rest - 1)
                {
                    var column = first + (word * 64) + BitOperations.TrailingZeroCount(rest);
                    var cell = (y, CellOf(column, cover.Grid.Left, placement.Offset.X, placement.IsTurned));
                    sums[cell] = sums.GetValueOrDefault(cell) + 1;
                }
            }
        }

        return new([.. sums.Keys.Order().Select(cell => new MassCell(cell.X, cell.Y, sums[cell]))]);
    }

    private static int CellOf(int small, int edge, int offset, bool isTurned)
    {
        var middle = (4 * edge) + (small * QuartersPerSmallCell) + (QuartersPerSmallCell / 2);
        var onCap = (isTurned ? -middle : middle) + (4 * offset);
        return onCap >= 0 ? onCap / QuartersPerCell : -((QuartersPerCell - 1 - onCap) / QuartersPerCell);
    }

    /// <summary>A row with everything one cell around what is covered; one word more on both sides.</summary>
    private static ulong[] Widened(Cover cover, int row)
    {
        var wide = new ulong[(cover.Row(cover.FirstRow).Length) + 2];
        for (var near = row - 1; near <= row + 1; near++)
        {
            var bits = cover.Row(near);
            for (var word = 0; word < bits.Length; word++)
            {
                wide[word + 1] |= bits[word] | (bits[word] << 1) | (bits[word] >> 1);
                wide[word] |= bits[word] << 63;
                wide[word + 2] |= bits[word] >> 63;
            }
        }

        return wide;
    }
}
