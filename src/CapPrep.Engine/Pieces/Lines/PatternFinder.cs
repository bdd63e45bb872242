using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces.Lines;

/// <summary>
/// Finds repeat patterns: the same few stitches over and over along a way, as in rows of diamonds and in overlocked
/// edges. What repeats after one or two stitches is a line or a zigzag, what goes back and forth on one axis rows.
/// The limits were found by looking at real designs (house).
/// </summary>
internal sealed class PatternFinder
{
    /// <summary>Fewer stitches are no pattern.</summary>
    public const int FewestStitches = 18;

    private const int ShortestRepeat = 3;
    private const int LongestRepeat = 16;

    // So many stitches in a row may miss; in all at least 90 of 100 repeat.
    private const int MostMisses = 2;
    private const int RepeatingPercent = 90;

    // A stitch repeats another one when their ends lie no more apart than a third of their length and 0.2 mm.
    private const int LikePercent = 35;
    private const int LikeUnits = 2;

    // As many repeat after one or two stitches at most; as many lie on one axis at most; from repeat to repeat 0.5 mm.
    private const int PlainPercent = 50;
    private const int AxisPercent = 72;
    private const int LeastAdvance = 5;

    // A pattern is beyond doubt when all but two of 100 repeat, or all but five and the axes differ more than they must.
    private const int VeryClearRepeatingPercent = 98;
    private const int ClearRepeatingPercent = 95;
    private const int ClearAxisPercent = 65;

    private readonly StitchSequence _stitches;
    private readonly Interval _line;

    private PatternFinder(StitchSequence stitches, Interval line) => (_stitches, _line) = (stitches, line);

    /// <summary>The patterns among open stitches, in time order; they do not overlap.</summary>
    public static IReadOnlyList<Pattern> Among(StitchSequence stitches, Interval line)
    {
        if (line.Count <= FewestStitches)
            return [];
        var finder = new PatternFinder(stitches, line);
        var found = new List<Pattern>();
        foreach (var pattern in Enumerable.Range(ShortestRepeat, LongestRepeat - ShortestRepeat + 1)
            .SelectMany(finder.Runs)
            .OrderByDescending(pattern => pattern.Interval.Count).ThenBy(pattern => pattern.Repeat).ThenBy(pattern => pattern.Interval.First))
        {
            var free = found.Aggregate(pattern, (rest, other) => rest.Without(other));
            if (free.IsLong && finder.IsPattern(free))
                found.Add(finder.Judged(free));
        }

        return [.. found.OrderBy(pattern => pattern.Interval.First)];
    }

    private TapePoint Stitch(int index) => _stitches.At(index) - _stitches.At(index - 1);

    private bool IsLike(int index, int other)
    {
        var (one, two) = (Stitch(index), Stitch(other));
        var longer = Math.Max(Fine.Length(one), Fine.Length(two));
        return 100 * Fine.Length(one - two) <= (LikePercent * longer) + (100 * LikeUnits * Fine.PerTenth)
            && !_stitches.IsFloat(index) && !_stitches.IsFloat(other);
    }

    /// <summary>Where stitches repeat after so many others.</summary>
    private IEnumerable<Pattern> Runs(int repeat)
    {
        var (first, last, alike) = (0, 0, 0);
        for (var i = _line.First + 1; i <= _line.Last - repeat + 1; i++)
        {
            if (i <= _line.Last - repeat && IsLike(i, i + repeat))
            {
                (first, alike) = alike == 0 ? (i, 1) : (first, alike + 1);
                last = i;
            }
            else if (alike > 0 && (i - last > MostMisses || i > _line.Last - repeat))
            {
                var run = new Pattern(new(first - 1, last + repeat), repeat, 100 * alike / (last - first + 1), IsSure: true);
                if (run.RepeatingPercent >= RepeatingPercent && run.IsLong)
                    yield return run;
                alike = 0;
            }
        }
    }

    private bool IsPattern(Pattern pattern) =>
        Repeating(pattern, 1) < PlainPercent
        && Repeating(pattern, 2) < PlainPercent
        && AlongAxisPercent(pattern) < AxisPercent
        && Advances(pattern);

    /// <summary>The pattern, and whether there is no doubt about it.</summary>
    private Pattern Judged(Pattern pattern) => pattern with
    {
        IsSure = pattern.RepeatingPercent >= VeryClearRepeatingPercent
            || (pattern.RepeatingPercent >= ClearRepeatingPercent && AlongAxisPercent(pattern) < ClearAxisPercent),
    };

    private int Repeating(Pattern pattern, int repeat)
    {
        var stitches = pattern.Interval.Count - 1 - repeat;
        return 100 * Enumerable.Range(pattern.Interval.First + 1, stitches).Count(i => IsLike(i, i + repeat)) / stitches;
    }

    /// <summary>How well the stitches of one repeat agree on an axis, on average.</summary>
    private int AlongAxisPercent(Pattern pattern)
    {
        var repeats = (pattern.Interval.Count - 1) / pattern.Repeat;
        return Enumerable.Range(0, repeats).Sum(k => Enumerable
            .Range(pattern.Interval.First + 1 + (k * pattern.Repeat), pattern.Repeat)
            .Aggregate(Axis.None, (axis, i) => axis.With(Axis.Of(Stitch(i))))
            .AgreeingPercent) / repeats;
    }

    /// <summary>Most repeats lie apart: it is no line that goes round in place.</summary>
    private bool Advances(Pattern pattern)
    {
        var repeats = pattern.Interval.Count - pattern.Repeat;
        var advancing = Enumerable.Range(pattern.Interval.First, repeats)
            .Count(i => Fine.Square(_stitches.At(i + pattern.Repeat) - _stitches.At(i)) >= LeastAdvance * LeastAdvance);
        return 2 * advancing > repeats;
    }
}

/// <summary>Stitches that repeat.</summary>
/// <param name="Interval">From where the first one starts to where the last one ends.</param>
/// <param name="Repeat">Stitches until it begins anew.</param>
/// <param name="RepeatingPercent">Share of the stitches that repeat.</param>
/// <param name="IsSure">No limit is near.</param>
internal sealed record Pattern(Interval Interval, int Repeat, int RepeatingPercent, bool IsSure)
{
    private const int FewestRepeats = 3;

    public bool IsLong => Interval.Count > Math.Max(PatternFinder.FewestStitches, FewestRepeats * Repeat);

    /// <summary>The part outside of another pattern, before or behind it.</summary>
    public Pattern Without(Pattern other) =>
        !Interval.Meets(other.Interval) ? this
        : Interval.First >= other.Interval.First ? this with { Interval = Interval with { First = other.Interval.Last + 1 } }
        : this with { Interval = Interval with { Last = other.Interval.First - 1 } };
}
