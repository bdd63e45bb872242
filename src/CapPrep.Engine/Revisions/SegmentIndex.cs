using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Revisions;

/// <summary>The stitches of one design by where they begin and end.</summary>
internal sealed class SegmentIndex
{
    /// <summary>What a program that writes a tape again may round away, tape units (house).</summary>
    internal const int Tolerance = 2;

    // Where more stitches begin in one spot, nobody can say which of them is which.
    private const int MostLookedAt = 250;

    // A design of 20,000 stitches needs a tenth of it; beyond it, what is sewn upon itself is not told apart any more.
    private const int MostLookedAtInAll = 40_000_000;

    private readonly DesignPoints _design;
    private readonly Dictionary<(int X, int Y), List<int>> _starts = [];
    private int _lookedAtInAll;

    internal SegmentIndex(DesignPoints design)
    {
        _design = design;
        for (var i = 0; i + 1 < design.Count; i++)
        {
            Enter(design.At(i), i);
            if (CellOf(design.At(i)) != CellOf(design.At(i + 1)))
                Enter(design.At(i + 1), i);
        }
    }

    /// <summary>Stitches, by their first needle point, that lie where this one lies, in either direction.</summary>
    internal IEnumerable<int> At(TapePoint from, TapePoint to)
    {
        var (x, y) = CellOf(from);
        var looked = 0;
        for (var cell = 0; cell < 9; cell++)
        {
            if (!_starts.TryGetValue((x + (cell / 3) - 1, y + (cell % 3) - 1), out var starts))
                continue;
            foreach (var start in starts)
            {
                if (++looked > MostLookedAt || ++_lookedAtInAll > MostLookedAtInAll)
                    yield break;
                if (Lies(start, from, to) || Lies(start, to, from))
                    yield return start;
            }
        }
    }

    /// <summary>The stitch that begins at a needle point goes from here to there.</summary>
    internal bool Lies(int start, TapePoint from, TapePoint to) =>
        start >= 0 && start + 1 < _design.Count && Near(_design.At(start), from) && Near(_design.At(start + 1), to);

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
