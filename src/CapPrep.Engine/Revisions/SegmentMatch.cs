using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Revisions;

/// <summary>
/// Finds the stitches of one design in another, wherever they stand in its order and in whichever direction they are
/// sewn.
/// </summary>
internal sealed class SegmentMatch
{
    /// <summary>What a program that writes a tape again may round away, tape units (house).</summary>
    internal const int Tolerance = 2;

    // Where so many stitches begin in one cell, nobody can say which of them is which.
    private const int MostLookedAt = 1000;

    private readonly DesignPoints _earlier;
    private readonly DesignPoints _now;
    private readonly TapePoint _shift;
    private readonly Dictionary<(int X, int Y), List<int>> _starts = [];
    private readonly bool[] _isMet;
    private readonly int[] _partner;

    private SegmentMatch(DesignPoints earlier, DesignPoints now, TapePoint shift)
    {
        (_earlier, _now, _shift) = (earlier, now, shift);
        _isMet = new bool[now.Count];
        _partner = new int[earlier.Count];
        for (var i = 0; i + 1 < now.Count; i++)
        {
            Enter(now.At(i), i);
            if (CellOf(now.At(i)) != CellOf(now.At(i + 1)))
                Enter(now.At(i + 1), i);
        }
    }

    internal static SegmentMatch Of(DesignPoints earlier, DesignPoints now, TapePoint shift)
    {
        var match = new SegmentMatch(earlier, now, shift);
        foreach (var element in earlier.Reading.Elements)
            match.Find(element);
        return match;
    }

    /// <summary>How many stitches of an earlier element are not in the new design.</summary>
    internal int Missing(Element earlier) =>
        Enumerable.Range(earlier.First, earlier.Penetrations - 1).Count(i => _partner[i] < 0);

    /// <summary>How many stitches of a new element were not in the earlier design.</summary>
    internal int Unknown(Element now) =>
        Enumerable.Range(now.First, now.Penetrations - 1).Count(i => !_isMet[i]);

    /// <summary>The color block of the new design that sews most of an earlier element; null: none of it is there.</summary>
    internal int? BlockNow(Element earlier) => Enumerable.Range(earlier.First, earlier.Penetrations - 1)
        .Where(i => _partner[i] >= 0)
        .GroupBy(i => _now.Stitches.Block[_partner[i]])
        .OrderByDescending(group => group.Count())
        .ThenBy(group => group.Key)
        .Select(group => (int?)group.Key)
        .FirstOrDefault();

    /// <summary>The stitch behind the last one found is looked at first: most designs come back mostly as they were.</summary>
    private void Find(Element element)
    {
        var hint = -1;
        for (var i = element.First; i < element.Last; i++)
        {
            var (from, to) = (_earlier.At(i) + _shift, _earlier.At(i + 1) + _shift);
            var found = hint >= 0 && Fits(hint, from, to) ? hint : Search(from, to);
            _partner[i] = found;
            if (found >= 0)
                _isMet[found] = true;
            hint = found >= 0 ? found + 1 : -1;
        }
    }

    private int Search(TapePoint from, TapePoint to)
    {
        var (x, y) = CellOf(from);
        var looked = 0;
        for (var dx = -1; dx <= 1; dx++)
        {
            for (var dy = -1; dy <= 1; dy++)
            {
                if (!_starts.TryGetValue((x + dx, y + dy), out var starts))
                    continue;
                foreach (var start in starts)
                {
                    if (++looked > MostLookedAt)
                        return -1;
                    if (Fits(start, from, to))
                        return start;
                }
            }
        }

        return -1;
    }

    private bool Fits(int start, TapePoint from, TapePoint to)
    {
        if (start + 1 >= _now.Count || _isMet[start])
            return false;
        var (one, other) = (_now.At(start), _now.At(start + 1));
        return (Near(one, from) && Near(other, to)) || (Near(other, from) && Near(one, to));
    }

    private void Enter(TapePoint at, int start)
    {
        if (!_starts.TryGetValue(CellOf(at), out var starts))
            _starts[CellOf(at)] = starts = [];
        starts.Add(start);
    }

    private static bool Near(TapePoint one, TapePoint other) => (one - other).Reach <= Tolerance;

    /// <summary>Cells of 8 units: whatever is near lies in the same cell or in one beside it.</summary>
    private static (int X, int Y) CellOf(TapePoint at) => (at.X >> 3, at.Y >> 3);
}
