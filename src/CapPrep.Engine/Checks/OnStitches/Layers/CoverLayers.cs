using System.Numerics;
using System.Runtime.InteropServices;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Layers;

/// <summary>How many of some pieces lie on each cell.</summary>
internal sealed class CoverLayers
{
    private const int WordBits = 64;

    private readonly int _left;
    private readonly int _bottom;
    private readonly int _columns;
    private readonly byte[] _layers;

    private CoverLayers(IReadOnlyList<Cover> covers)
    {
        _left = covers.Min(cover => cover.FirstColumn);
        _bottom = covers.Min(cover => cover.FirstRow);
        _columns = covers.Max(cover => cover.FirstColumn + (cover.Row(cover.FirstRow).Length * WordBits)) - _left;
        _layers = new byte[_columns * (covers.Max(cover => cover.FirstRow + cover.Rows) - _bottom)];
        foreach (var cover in covers)
            Add(cover);
    }

    private CoverLayers(CoverLayers like, byte[] layers) =>
        (_left, _bottom, _columns, _layers) = (like._left, like._bottom, like._columns, layers);

    /// <summary>Null when no cell is covered.</summary>
    internal static CoverLayers? Of(IEnumerable<Cover> covers)
    {
        Cover[] all = [.. covers.Where(cover => cover.Area > 0)];
        return all.Length == 0 ? null : new(all);
    }

    /// <summary>Somewhere four of the covers or more lie on each other.</summary>
    internal static bool AnyFour(IReadOnlyList<Cover> covers)
    {
        var counts = new Dictionary<(int Row, int Column), (ulong One, ulong Two)>();
        foreach (var cover in covers)
        {
            for (var row = cover.FirstRow; row < cover.FirstRow + cover.Rows; row++)
            {
                var words = cover.Row(row);
                for (var word = 0; word < words.Length; word++)
                {
                    if (words[word] == 0)
                        continue;
                    ref var count = ref CollectionsMarshal.GetValueRefOrAddDefault(counts, (row, cover.FirstColumn + (word * WordBits)), out _);
                    var carried = count.One & words[word];
                    if ((count.Two & carried) != 0)
                        return true;
                    count = (count.One ^ words[word], count.Two ^ carried);
                }
            }
        }

        return false;
    }

    internal int At(Cell cell) => _layers[Index(cell.Column, cell.Row)];

    /// <summary>For each cell the least layers anywhere in the square spot that it is the lower left corner of.</summary>
    internal CoverLayers OfSpots(int side)
    {
        var across = Least(_layers, index => index % _columns <= _columns - side, side, 1);
        return new(this, Least(across, index => index + ((side - 1) * _columns) < across.Length, side, _columns));
    }

    private void Add(Cover cover)
    {
        for (var row = cover.FirstRow; row < cover.FirstRow + cover.Rows; row++)
        {
            var words = cover.Row(row);
            for (var word = 0; word < words.Length; word++)
            {
                for (var bits = words[word]; bits != 0; bits &= bits - 1)
                {
                    ref var layers = ref _layers[Index(cover.FirstColumn + (word * WordBits) + BitOperations.TrailingZeroCount(bits), row)];
                    layers += layers < byte.MaxValue ? (byte)1 : (byte)0;
                }
            }
        }
    }

    /// <summary>The least of so many values in line, so many places apart from each other; 0 where no line fits.</summary>
    private static byte[] Least(byte[] values, Func<int, bool> fits, int count, int apart)
    {
        var least = new byte[values.Length];
        for (var index = 0; index < values.Length; index++)
        {
            if (values[index] == 0 || !fits(index))
                continue;
            var found = values[index];
            for (var at = 1; at < count && found > 0; at++)
                found = Math.Min(found, values[index + (at * apart)]);
            least[index] = found;
        }

        return least;
    }

    /// <summary>Cells side by side that have more than so many layers, each region once.</summary>
    internal IEnumerable<IReadOnlyList<Cell>> Regions(int moreThan)
    {
        var seen = new bool[_layers.Length];
        for (var index = 0; index < _layers.Length; index++)
        {
            if (_layers[index] > moreThan && !seen[index])
                yield return [.. Region(index, moreThan, seen).Select(CellAt)];
        }
    }

    private List<int> Region(int from, int moreThan, bool[] seen)
    {
        var region = new List<int> { from };
        seen[from] = true;
        for (var next = 0; next < region.Count; next++)
        {
            foreach (var neighbor in Neighbors(region[next]).Where(index => _layers[index] > moreThan && !seen[index]))
            {
                seen[neighbor] = true;
                region.Add(neighbor);
            }
        }

        return region;
    }

    private IEnumerable<int> Neighbors(int index)
    {
        if (index % _columns > 0)
            yield return index - 1;
        if (index % _columns < _columns - 1)
            yield return index + 1;
        if (index >= _columns)
            yield return index - _columns;
        if (index + _columns < _layers.Length)
            yield return index + _columns;
    }

    private Cell CellAt(int index) => new(_left + (index % _columns), _bottom + (index / _columns));

    private int Index(int column, int row) => ((row - _bottom) * _columns) + column - _left;
}

/// <summary>A cell of the grid of covers.</summary>
internal readonly record struct Cell(int Column, int Row);
