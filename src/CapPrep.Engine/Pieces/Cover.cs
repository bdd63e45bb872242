using System.Numerics;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// The cells of 0.25 mm that threads run over, one bit each, cropped to their box. All covers of a design lie on
/// one grid that begins at its lower left, so cells of two covers can be compared; rows are cut at multiples of 64 cells.
/// </summary>
public sealed class Cover
{
    /// <summary>Cells along one millimeter; a cell is 2.5 tape units wide.</summary>
    public const int CellsPerMillimeter = 4;

    /// <summary>Cells in one square millimeter.</summary>
    public const int CellsPerSquareMillimeter = CellsPerMillimeter * CellsPerMillimeter;

    /// <summary>No cell.</summary>
    public static readonly Cover None = new(default, CellBox.None, []);

    private const int WordBits = 64;

    private readonly ulong[] _words;

    internal Cover(CellGrid grid, CellBox box, ulong[] words)
    {
        (Grid, Cells, _words) = (grid, box, words);
        Area = words.Sum(BitOperations.PopCount);
    }

    /// <summary>Where its cells lie.</summary>
    internal CellGrid Grid { get; }

    /// <summary>The cells the cover is cropped to; whole words along a row.</summary>
    internal CellBox Cells { get; }

    /// <summary>How many cells are covered.</summary>
    public int Area { get; }

    /// <summary>Covered area, mm2.</summary>
    public double SquareMillimeters => (double)Area / CellsPerSquareMillimeter;

    /// <summary>Lowest row of the box; rows count upward.</summary>
    public int FirstRow => Cells.Bottom;

    /// <summary>Rows of the box.</summary>
    public int Rows => Cells.Rows;

    /// <summary>Column of the first bit of a row; a multiple of 64.</summary>
    public int FirstColumn => Cells.LeftWord * WordBits;

    /// <summary>The bits of one row of the grid, lowest column in the lowest bit; empty outside the box.</summary>
    public ReadOnlySpan<ulong> Row(int row) => row < Cells.Bottom || row > Cells.Top
        ? []
        : _words.AsSpan((row - Cells.Bottom) * Cells.Words, Cells.Words);

    /// <summary>The cell in a column and row of the grid is covered.</summary>
    public bool Contains(int column, int row)
    {
        var word = (column >> 6) - Cells.LeftWord;
        return word >= 0 && word < Cells.Words && row >= Cells.Bottom && row <= Cells.Top
            && (_words[((row - Cells.Bottom) * Cells.Words) + word] >> (column & 63) & 1) != 0;
    }

    /// <summary>The cell of a position in tape units is covered.</summary>
    public bool Contains(TapePoint at) => Contains(Grid.Column(at.X), Grid.Row(at.Y));

    /// <summary>Lower left corner of a cell, tape units.</summary>
    public TapePoint Corner(int column, int row) => Grid.Corner(column, row);

    /// <summary>Cells that both cover.</summary>
    public int Shared(Cover other)
    {
        var common = Cells.Common(other.Cells);
        if (common.Size == 0)
            return 0;
        var shared = 0;
        for (var row = common.Bottom; row <= common.Top; row++)
        {
            var mine = Part(row, common);
            var its = other.Part(row, common);
            for (var word = 0; word < mine.Length; word++)
                shared += BitOperations.PopCount(mine[word] & its[word]);
        }

        return shared;
    }

    /// <summary>Cells that at least one of them covers.</summary>
    internal static Cover Of(IEnumerable<Cover> parts)
    {
        Cover[] all = [.. parts.Where(part => part.Area > 0)];
        if (all.Length <= 1)
            return all.Length == 0 ? None : all[0];
        var box = new CellBox(
            all.Min(part => part.Cells.LeftWord), all.Min(part => part.Cells.Bottom),
            all.Max(part => part.Cells.RightWord), all.Max(part => part.Cells.Top));
        var words = new ulong[box.Size];
        foreach (var part in all)
            part.AddTo(words, box, box);
        return new(all[0].Grid, box, words);
    }

    /// <summary>Cells that both cover.</summary>
    internal Cover Common(Cover other)
    {
        var words = new ulong[_words.Length];
        other.AddTo(words, Cells, Cells.Common(other.Cells));
        for (var i = 0; i < words.Length; i++)
            words[i] &= _words[i];
        return new(Grid, Cells, words);
    }

    /// <summary>Cells that it shares with at least one of the others.</summary>
    internal int SharedWithAny(IEnumerable<Cover> others)
    {
        var words = new ulong[_words.Length];
        foreach (var other in others)
            other.AddTo(words, Cells, Cells.Common(other.Cells));
        var shared = 0;
        for (var i = 0; i < words.Length; i++)
            shared += BitOperations.PopCount(words[i] & _words[i]);
        return shared;
    }

    private void AddTo(ulong[] words, in CellBox box, in CellBox common)
    {
        if (common.Size == 0)
            return;
        for (var row = Math.Max(common.Bottom, Cells.Bottom); row <= Math.Min(common.Top, Cells.Top); row++)
        {
            for (var word = Math.Max(common.LeftWord, Cells.LeftWord); word <= Math.Min(common.RightWord, Cells.RightWord); word++)
                words[((row - box.Bottom) * box.Words) + word - box.LeftWord] |= _words[((row - Cells.Bottom) * Cells.Words) + word - Cells.LeftWord];
        }
    }

    /// <summary>One cell of the one is a cell of the other or next to it.</summary>
    internal bool Touches(Cover other) => Grown().Shared(other) > 0;

    /// <summary>With every cell next to a covered one, corners included.</summary>
    internal Cover Grown()
    {
        if (Area == 0)
            return this;
        var grown = new CellBox(Cells.LeftWord - 1, Cells.Bottom - 1, Cells.RightWord + 1, Cells.Top + 1);
        var words = new ulong[grown.Size];
        for (var row = Cells.Bottom; row <= Cells.Top; row++)
        {
            var mine = Row(row);
            for (var up = -1; up <= 1; up++)
            {
                Spread(mine, words, ((row + up - grown.Bottom) * grown.Words) + 1);
            }
        }

        return new(Grid, grown, words);
    }

    /// <summary>Without every cell next to one that is not covered, corners included.</summary>
    internal Cover Shrunk()
    {
        var words = new ulong[_words.Length];
        for (var row = Cells.Bottom + 1; row < Cells.Top; row++)
        {
            for (var word = 0; word < Cells.Words; word++)
                words[((row - Cells.Bottom) * Cells.Words) + word] = Inner(row - 1, word) & Inner(row, word) & Inner(row + 1, word);
        }

        return new(Grid, Cells, words);
    }

    /// <summary>With gaps of up to two cells filled.</summary>
    internal Cover Filled() => Grown().Shrunk();

    /// <summary>Without what is no more than two cells wide.</summary>
    internal Cover Solid() => Shrunk().Grown();

    /// <summary>Cells of a word whose neighbors to both sides are covered too.</summary>
    private ulong Inner(int row, int word)
    {
        var at = ((row - Cells.Bottom) * Cells.Words) + word;
        var bits = _words[at];
        var before = word > 0 ? _words[at - 1] >> (WordBits - 1) : 0;
        var behind = word + 1 < Cells.Words ? _words[at + 1] << (WordBits - 1) : 0;
        return bits & ((bits << 1) | before) & ((bits >> 1) | behind);
    }

    private static void Spread(ReadOnlySpan<ulong> row, ulong[] words, int start)
    {
        for (var word = 0; word < row.Length; word++)
        {
            var bits = row[word];
            words[start + word - 1] |= bits << (WordBits - 1);
            words[start + word] |= bits | (bits << 1) | (bits >> 1);
            words[start + word + 1] |= bits >> (WordBits - 1);
        }
    }

    /// <summary>Every covered cell, row by row upward, left to right.</summary>
    internal IEnumerable<(int Column, int Row)> CoveredCells()
    {
        for (var row = Cells.Bottom; row <= Cells.Top; row++)
        {
            for (var word = 0; word < Cells.Words; word++)
            {
                for (var bits = _words[((row - Cells.Bottom) * Cells.Words) + word]; bits != 0; bits &= bits - 1)
                    yield return (((Cells.LeftWord + word) * WordBits) + BitOperations.TrailingZeroCount(bits), row);
            }
        }
    }

    /// <summary>
    /// Threads in two boxes can share a cell: also where the boxes lie apart by less than a cell.
    /// </summary>
    internal static bool CanShare(Box one, Box other) =>
        one.Left <= other.Right + CellGrid.Reach && other.Left <= one.Right + CellGrid.Reach
        && one.Bottom <= other.Top + CellGrid.Reach && other.Bottom <= one.Top + CellGrid.Reach;

    private ReadOnlySpan<ulong> Part(int row, in CellBox part) =>
        Row(row).Slice(part.LeftWord - Cells.LeftWord, part.Words);
}
