namespace CapPrep.Engine.Sequence.Cost;

/// <summary>
/// How much thread of one element lies where it should not be sewn before another's: above it in its lane, or beside
/// it and farther from the seam. Mass against mass, so that cutting an element in two changes no sum.
/// </summary>
internal sealed class PairMasses
{
    // House: full weight to 10 mm beside or above, none from 30 mm on, in cells of 2 mm; a lower one counts twice.
    private const int FullCells = 5;
    private const int NoneCells = 15;
    private const int LowerWeight = 2;

    // House: lower or farther from the seam by at least 6 mm; within 5 mm of the seam there is no side.
    private const int LowerCells = 3;
    private const int OuterCells = 3;
    private const int OnSeamMm = 5;

    private readonly IReadOnlyList<MassMap> _maps;
    private readonly long[] _lower;
    private readonly long[] _inner;

    private PairMasses(IReadOnlyList<MassMap> maps)
    {
        _maps = maps;
        _lower = new long[maps.Count * maps.Count];
        _inner = new long[maps.Count * maps.Count];
    }

    /// <summary>Products of masses, with weights: how much of the second lies below the first.</summary>
    internal long Lower(int first, int second) => _lower[(first * _maps.Count) + second];

    /// <summary>The same: how much of the second lies nearer to the seam than the first.</summary>
    internal long Inner(int first, int second) => _inner[(first * _maps.Count) + second];

    internal static PairMasses Of(IReadOnlyList<MassMap> maps)
    {
        var masses = new PairMasses(maps);
        for (var second = 0; second < maps.Count; second++)
        {
            if (maps[second].Cells.Count == 0)
                continue;
            var below = MassBelow.Of(maps[second]);
            var inside = MassInside.Of(maps[second]);
            for (var first = 0; first < maps.Count; first++)
            {
                if (first != second)
                    masses.Compare(first, second, below, inside);
            }
        }

        return masses;
    }

    private void Compare(int first, int second, MassBelow below, MassInside inside)
    {
        var (lower, inner) = (0L, 0L);
        foreach (var cell in _maps[first].Cells)
        {
            lower += cell.Mass * below.At(cell.X, cell.Y - LowerCells);
            inner += cell.Mass * inside.At(cell.X, cell.Y);
        }

        _lower[(first * _maps.Count) + second] = LowerWeight * lower;
        _inner[(first * _maps.Count) + second] = inner;
    }

    private static int Weight(int cells) => cells <= FullCells ? NoneCells - FullCells : Math.Max(0, NoneCells - cells);

    private static (int Left, int Bottom, int Right, int Top) BoxOf(MassMap map) => (
        map.Cells.Min(cell => cell.X), map.Cells[0].Y, map.Cells.Max(cell => cell.X), map.Cells[^1].Y);

    /// <summary>For every column and row: the mass at and below, weighted by how far beside.</summary>
    private sealed class MassBelow(int left, int bottom, int columns, int rows)
    {
        private readonly long[] _sums = new long[columns * rows];

        internal long At(int x, int y)
        {
            var (column, row) = (x - left, Math.Min(y - bottom, rows - 1));
            return column < 0 || column >= columns || row < 0 ? 0 : _sums[(row * columns) + column];
        }

        internal static MassBelow Of(MassMap map)
        {
            var box = BoxOf(map);
            const int beside = NoneCells - 1;
            var below = new MassBelow(box.Left - beside, box.Bottom, box.Right - box.Left + 1 + (2 * beside), box.Top - box.Bottom + 1);
            foreach (var cell in map.Cells)
                below.Spread(cell, beside);
            below.SumUp();
            return below;
        }

        private void Spread(MassCell cell, int beside)
        {
            var at = ((cell.Y - bottom) * columns) + cell.X - left;
            for (var away = -beside; away <= beside; away++)
                _sums[at + away] += cell.Mass * Weight(Math.Abs(away));
        }

        private void SumUp()
        {
            for (var at = columns; at < _sums.Length; at++)
                _sums[at] += _sums[at - columns];
        }
    }

    /// <summary>For every row and column: the mass at and to the left, weighted by how far above or below.</summary>
    private sealed class MassInside(int left, int bottom, int columns, int rows)
    {
        private readonly long[] _sums = new long[(columns + 1) * rows];

        /// <summary>The mass nearer to the seam than a place, on its side or on the seam.</summary>
        internal long At(int x, int y)
        {
            var row = y - bottom;
            if (row < 0 || row >= rows)
                return 0;
            var fromSeam = x >= 0 ? (2 * x) + 1 : (-2 * x) - 1;
            if (fromSeam <= 2 * OuterCells)
                return 0;
            var beyond = (Math.Min(OnSeamMm, fromSeam - (2 * OuterCells)) + 1) / 2;
            return x >= 0
                ? Between(row, -beyond, x - OuterCells)
                : Between(row, x + OuterCells, beyond - 1);
        }

        internal static MassInside Of(MassMap map)
        {
            var box = BoxOf(map);
            const int beside = NoneCells - 1;
            var inside = new MassInside(box.Left, box.Bottom - beside, box.Right - box.Left + 1, box.Top - box.Bottom + 1 + (2 * beside));
            foreach (var cell in map.Cells)
                inside.Spread(cell, beside);
            inside.SumUp();
            return inside;
        }

        private void Spread(MassCell cell, int beside)
        {
            for (var away = -beside; away <= beside; away++)
                _sums[((cell.Y + away - bottom) * (columns + 1)) + cell.X - left + 1] += cell.Mass * Weight(Math.Abs(away));
        }

        private void SumUp()
        {
            for (var at = 1; at < _sums.Length; at++)
            {
                if (at % (columns + 1) != 0)
                    _sums[at] += _sums[at - 1];
            }
        }

        private long Between(int row, int from, int to)
        {
            var (first, last) = (Math.Max(0, from - left), Math.Min(columns - 1, to - left));
            var at = row * (columns + 1);
            return first > last ? 0 : _sums[at + last + 1] - _sums[at + first];
        }
    }
}
