
namespace CapPrep.Engine.Sequence.Cost;

/// <summary>
/// What it costs to sew one element before another, in billionths of the worst that order can still do, from three
/// rules: from the bottom up and from the seam outward, text lines outward, the tagline first. Pairs whose order is
/// decided cost nothing.
/// </summary>
internal sealed class OrderCosts
{
    /// <summary>The whole, in the unit of costs.</summary>
    internal const long Scale = 1_000_000_000;

    // House: a text line sewn the wrong way weighs a tenth of everything, a late tagline half.
    private const int LinePercent = 10;
    private const int TaglinePercent = 50;

    // House: no difference below a fifth of 20 A A.
    private const int DeadBand = 4;

    private readonly OrderSubject _subject;
    private readonly PairMasses _masses;
    private readonly long[] _wrong;
    private readonly int[] _lineOf;
    private readonly bool[] _isTagline;
    private readonly bool[] _carriesTagline;

    private OrderCosts(OrderSubject subject)
    {
        _subject = subject;
        _masses = PairMasses.Of(subject.Masses);
        _isTagline = [.. Enumerable.Range(0, Count).Select(subject.Lines.Tagline.Contains)];
        _carriesTagline = CarryTagline();
        _lineOf = LineOfElements();
        _wrong = WrongWays();
        Worst = SumOfWorst();
        Lines = [.. subject.Lines.Lines.Select(line => LinePairs.Of(line, subject.Threads, subject.Layers))];
        TaglineWorst = AllTaglinePairs().Sum(pair => MassOf(pair.First, pair.Second));
    }

    internal int Count => _subject.Masses.Count;

    /// <summary>Sum of the worse ways round of all pairs that order can decide; 0: nothing can be decided.</summary>
    internal long Worst { get; }

    /// <summary>Of every text line.</summary>
    internal IReadOnlyList<LinePairs> Lines { get; }

    /// <summary>Sum of the masses of all pairs of a tagline element and one that should come after it.</summary>
    internal long TaglineWorst { get; }

    internal static OrderCosts Of(OrderSubject subject) => new(subject);

    /// <summary>How wrong it is to sew the first before the second; 0 when it is right or does not matter.</summary>
    internal long Wrong(int first, int second) => _wrong[(first * Count) + second];

    /// <summary>The wrong way round of this pair is one of height rather than of distance from the seam.</summary>
    internal bool IsOfHeight(int first, int second) =>
        _masses.Lower(first, second) - _masses.Lower(second, first) >= _masses.Inner(first, second) - _masses.Inner(second, first);

    /// <summary>Product of the masses of two elements.</summary>
    internal long MassOf(int first, int second) => _subject.Masses[first].Total * _subject.Masses[second].Total;

    /// <summary>The first lies outside the tagline and need not come before the second, which lies in it.</summary>
    internal bool DelaysTagline(int first, int second) =>
        !_isTagline[first] && _isTagline[second] && !_carriesTagline[first]
        && !_subject.IsPinned(first) && _subject.Precedence.IsFree(first, second);

    /// <summary>Row by row what the search minimizes.</summary>
    internal long[] Objective()
    {
        var costs = new long[Count * Count];
        for (var pair = 0; pair < costs.Length; pair++)
            costs[pair] = ShareOf(_wrong[pair], Worst, 100);
        foreach (var line in Lines)
        {
            foreach (var (first, second, weight) in line.Pairs)
                costs[(first * Count) + second] += ShareOf(weight, line.Weight, LinePercent);
        }

        foreach (var (first, second) in AllTaglinePairs())
            costs[(first * Count) + second] += ShareOf(MassOf(first, second), TaglineWorst, TaglinePercent);
        return costs;
    }

    /// <summary>Row by row the order index alone, without text lines and tagline.</summary>
    internal long[] IndexOnly() => [.. _wrong.Select(wrong => ShareOf(wrong, Worst, 100))];

    private static long ShareOf(long part, long whole, int percent) =>
        part == 0 ? 0 : (long)((((Int128)part * Scale * percent / 50 / whole) + 1) / 2);

    private IEnumerable<(int First, int Second)> AllTaglinePairs() =>
        from second in _subject.Lines.Tagline
        from first in Enumerable.Range(0, Count)
        where DelaysTagline(first, second)
        select (first, second);

    private bool[] CarryTagline()
    {
        var under = Enumerable.Range(0, Count)
            .Where(item => _subject.Lines.TaglineGround.Contains(item) || _subject.Lines.Tagline.Any(of => _subject.Precedence.Orders(item, of)));
        var carries = new bool[Count];
        foreach (var item in _subject.Areas.All(under))
            carries[item] = true;
        return carries;
    }

    private int[] LineOfElements()
    {
        var lines = new int[Count];
        Array.Fill(lines, -1);
        for (var line = 0; line < _subject.Lines.Lines.Count; line++)
        {
            foreach (var place in _subject.Lines.Lines[line])
                lines[place.Element] = line;
        }

        return lines;
    }

    private long[] WrongWays()
    {
        var wrong = new long[Count * Count];
        for (var first = 0; first < Count; first++)
        {
            for (var second = 0; second < Count; second++)
            {
                if (IsJudged(first, second) && Net(first, second) is var net && net > DeadBand * MassOf(first, second))
                    wrong[(first * Count) + second] = net;
            }
        }

        return wrong;
    }

    private bool IsJudged(int first, int second) =>
        first != second
        && (_lineOf[first] < 0 || _lineOf[first] != _lineOf[second])
        && _isTagline[first] == _isTagline[second]
        && !AreNested(first, second)
        && !_subject.Areas.AreOne(first, second)
        && !_subject.Areas.Serves(first) && !_subject.Areas.Serves(second)
        && !_subject.IsPinned(first) && !_subject.IsPinned(second)
        && _subject.Precedence.IsFree(first, second);

    private long Net(int first, int second)
    {
        var lower = _masses.Lower(first, second) - _masses.Lower(second, first);
        return _lineOf[first] >= 0 && _lineOf[second] >= 0
            ? lower
            : lower + _masses.Inner(first, second) - _masses.Inner(second, first);
    }

    /// <summary>A ring or a border and what lies in it may be sewn either way round.</summary>
    private bool AreNested(int first, int second)
    {
        var (one, other) = (_subject.Masses[first], _subject.Masses[second]);
        return one.Total > 0 && other.Total > 0 && (one.IsAround(other) || other.IsAround(one));
    }

    private long SumOfWorst()
    {
        long sum = 0;
        for (var first = 0; first < Count; first++)
        {
            for (var second = first + 1; second < Count; second++)
                sum += Math.Max(Wrong(first, second), Wrong(second, first));
        }

        return sum;
    }
}
