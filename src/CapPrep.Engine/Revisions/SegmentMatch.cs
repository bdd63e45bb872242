using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Revisions;

/// <summary>
/// Finds the stitches of one design in another, wherever they stand in its order and in whichever direction they are
/// sewn: first in runs, the longest first, then what is left one by one.
/// </summary>
internal sealed class SegmentMatch
{
    /// <summary>Stitches of the runs looked for, one length after the other: a long run does not lie there by chance.</summary>
    private static readonly int[] Runs = [24, 8, 3];

    // A longer run is believed without being measured to its end.
    private const int MeasuredRun = 64;

    // Where stitches lie close together, partners are changed so often before a stitch is called missing.
    private const int MostChanges = 200;

    private const int None = -1;

    private readonly DesignPoints _earlier;
    private readonly DesignPoints _now;
    private readonly TapePoint _shift;
    private readonly SegmentIndex _index;
    private readonly bool[] _isMet;
    private readonly int[] _partner;
    private readonly int[] _owner;

    private SegmentMatch(DesignPoints earlier, DesignPoints now, TapePoint shift)
    {
        (_earlier, _now, _shift, _index) = (earlier, now, shift, new(now));
        _isMet = new bool[now.Count];
        _partner = [.. Enumerable.Repeat(None, earlier.Count)];
        _owner = [.. Enumerable.Repeat(None, now.Count)];
    }

    internal static SegmentMatch Of(DesignPoints earlier, DesignPoints now, TapePoint shift)
    {
        var match = new SegmentMatch(earlier, now, shift);
        foreach (var shortest in Runs)
            match.FindRuns(shortest);
        match.FindSingles();
        match.KnowTheRest();
        return match;
    }

    /// <summary>How many stitches of an earlier element are not in the new design.</summary>
    internal int Missing(Element earlier) => _partner.AsSpan(earlier.First, earlier.Penetrations - 1).Count(None);

    /// <summary>How many stitches of a new element were not in the earlier design.</summary>
    internal int Unknown(Element now) => _isMet.AsSpan(now.First, now.Penetrations - 1).Count(false);

    /// <summary>The color block of the new design that sews most of an earlier element; null: none of it is there.</summary>
    internal int? BlockNow(Element earlier) => Enumerable.Range(earlier.First, earlier.Penetrations - 1)
        .Where(i => _partner[i] >= 0)
        .GroupBy(i => _now.Stitches.Block[_partner[i]])
        .OrderByDescending(group => group.Count())
        .ThenBy(group => group.Key)
        .Select(group => (int?)group.Key)
        .FirstOrDefault();

    private (TapePoint From, TapePoint To) Segment(int i) => (_earlier.At(i) + _shift, _earlier.At(i + 1) + _shift);

    private void FindRuns(int shortest)
    {
        for (var i = 0; i + 1 < _earlier.Count;)
        {
            if (_partner[i] >= 0)
            {
                i++;
                continue;
            }

            var (from, to) = Segment(i);
            var (best, step, longest) = (None, 1, 0);
            foreach (var start in _index.At(from, to))
            {
                var (forward, backward) = (Run(i, start, 1, MeasuredRun), Run(i, start, -1, MeasuredRun));
                if (Math.Max(forward, backward) > longest)
                    (best, step, longest) = (start, forward >= backward ? 1 : -1, Math.Max(forward, backward));
                if (longest == MeasuredRun)
                    break;
            }

            i += longest < shortest ? 1 : Take(i, best, step, Run(i, best, step, int.MaxValue));
        }
    }

    /// <summary>Stitches from here on that have a free partner each, one behind the other.</summary>
    private int Run(int i, int start, int step, int most)
    {
        var length = 0;
        while (length < most && i + length + 1 < _earlier.Count && _partner[i + length] < 0 && Fits(start + (step * length), i + length, step))
            length++;
        return length;
    }

    private bool Fits(int start, int i, int step)
    {
        var (from, to) = Segment(i);
        return start >= 0 && !_isMet[start] && (step > 0 ? _index.Lies(start, from, to) : _index.Lies(start, to, from));
    }

    private int Take(int i, int start, int step, int length)
    {
        for (var k = 0; k < length; k++)
            Meet(i + k, start + (step * k));
        return length;
    }

    private void Meet(int earlier, int now) => (_partner[earlier], _owner[now], _isMet[now]) = (now, earlier, true);

    private void FindSingles()
    {
        for (var i = 0; i + 1 < _earlier.Count; i++)
        {
            if (_partner[i] == None)
                FindPartner(i, []);
        }
    }

    /// <summary>A free partner, or one whose owner finds another.</summary>
    /// <param name="asked">Partners that were asked for already.</param>
    private bool FindPartner(int i, HashSet<int> asked)
    {
        var (from, to) = Segment(i);
        foreach (var start in _index.At(from, to))
        {
            if (asked.Count >= MostChanges)
                return false;
            if (!asked.Add(start) || (_isMet[start] && !FindPartner(_owner[start], asked)))
                continue;
            Meet(i, start);
            return true;
        }

        return false;
    }

    /// <summary>A new stitch that lies on an earlier one is nothing new, though another one was its partner.</summary>
    private void KnowTheRest()
    {
        var earlier = new SegmentIndex(_earlier);
        for (var i = 0; i + 1 < _now.Count; i++)
            _isMet[i] = _isMet[i] || earlier.At(_now.At(i) - _shift, _now.At(i + 1) - _shift).Any();
    }
}
