using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Rows sewn back and forth beside each other: what satin, fill and zigzag are made of.</summary>
internal sealed class Chain
{
    /// <summary>Fewest rows of a chain.</summary>
    public const int FewestRows = 4;

    // How many rows on each side must go the other way for a fold, and by how much: 0.35 mm.
    private const int FoldRows = 4;
    private const int FoldAdvance = 35 * Fine.PerTenth / 10;

    // How many rows on each side show a change of spacing, and the least change of the pitch: 0.25 mm.
    private const int PitchRows = 5;
    private const int LeastPitchChange = 25 * Fine.PerTenth / 10;

    private readonly Stroke[] _rows;
    private readonly int[] _place;

    private Chain(Stroke[] rows)
    {
        _rows = rows;
        _place = PlacesOf(rows);
    }

    public IReadOnlyList<Stroke> Rows => _rows;

    /// <summary>
    /// How far each row lies from the first, across the rows and to one side, sixteenths of a tape unit; it goes on
    /// rising or falling as long as the rows advance one way.
    /// </summary>
    public ReadOnlySpan<int> Places => _place;

    /// <summary>The chains among strokes, cut where rows fold back over themselves or their spacing jumps.</summary>
    public static IEnumerable<Chain> Among(IReadOnlyList<Stroke> strokes)
    {
        for (var first = 0; first < strokes.Count;)
        {
            var next = first + 1;
            while (next < strokes.Count && strokes[next - 1].IsBeside(strokes[next]))
                next++;
            if (next - first >= FewestRows)
            {
                foreach (var part in new Chain([.. strokes.Skip(first).Take(next - first)]).Parts())
                    yield return part;
            }

            first = next;
        }
    }

    /// <summary>The chain without rows that lie beyond an interval; all of it when too few were left.</summary>
    public Chain Within(Interval interval)
    {
        Stroke[] rows = [.. _rows.Where(row => row.First < interval.Last && row.Last > interval.First)];
        return rows.Length == _rows.Length || rows.Length < FewestRows ? this : new(rows);
    }

    private static int[] PlacesOf(Stroke[] rows)
    {
        var places = new int[rows.Length];
        for (var k = 1; k < rows.Length; k++)
        {
            var along = k % 2 == 1 ? rows[k - 1].Chord - rows[k].Chord : rows[k].Chord - rows[k - 1].Chord;
            var apart = rows[k].DoubleMiddle - rows[k - 1].DoubleMiddle;
            var across = Fine.Cross(along, apart) * Fine.PerTenth * Fine.PerTenth / 2;
            places[k] = places[k - 1] + (int)(across / Fine.Length(along));
        }

        return places;
    }

    private IEnumerable<Chain> Parts()
    {
        var first = 0;
        foreach (var end in Cuts().Append(_rows.Length))
        {
            yield return end - first == _rows.Length ? this : new(_rows[first..end]);
            first = end;
        }
    }

    /// <summary>Rows that begin a new part; every part keeps enough rows.</summary>
    private IEnumerable<int> Cuts()
    {
        var (cut, best, strength) = (0, 0, 0);
        for (var row = FewestRows; row <= _rows.Length - FewestRows; row++)
        {
            if (best > 0 && row - best >= PitchRows)
            {
                yield return best;
                (cut, best, strength) = (best, 0, 0);
            }

            var here = row - cut < FewestRows ? 0 : Math.Max(FoldAt(row), PitchJumpAt(row));
            if (here > strength)
                (best, strength) = (row, here);
        }

        if (best > 0)
            yield return best;
    }

    /// <summary>How clearly the rows turn back at a row, the last of the way out; 0 when they do not.</summary>
    private int FoldAt(int row)
    {
        if (row <= FoldRows || row + FoldRows > _rows.Length)
            return 0;
        var before = _place[row - 1] - _place[row - 1 - FoldRows];
        var behind = _place[row - 1 + FoldRows] - _place[row - 1];
        var folds = Math.Sign(before) != Math.Sign(behind) && Math.Min(Math.Abs(before), Math.Abs(behind)) > FoldAdvance;
        return folds ? Math.Abs(before - behind) : 0;
    }

    /// <summary>How much the pitch changes from the rows before a row to those from it on; 0 unless it doubles or halves.</summary>
    private int PitchJumpAt(int row)
    {
        if (row < PitchRows + 2 || row + PitchRows + 2 > _rows.Length)
            return 0;
        Span<int> before = stackalloc int[PitchRows];
        Span<int> behind = stackalloc int[PitchRows];
        for (var k = 0; k < PitchRows; k++)
        {
            before[k] = Math.Abs(_place[row - 1 - k] - _place[row - 3 - k]);
            behind[k] = Math.Abs(_place[row + k + 2] - _place[row + k]);
        }

        var (one, other) = (Median.Of(before), Median.Of(behind));
        var (less, more) = (Math.Min(one, other), Math.Max(one, other));
        return more > 2 * less && more - less > LeastPitchChange ? more - less : 0;
    }
}
