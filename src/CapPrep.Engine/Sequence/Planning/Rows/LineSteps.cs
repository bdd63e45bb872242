using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Rows;

/// <summary>What it takes to sew more of a text line outward.</summary>
/// <param name="Line">Index of the line, from the lowest one up.</param>
/// <param name="Trims">How many more there are.</param>
/// <param name="LineIndex">Share of its pairs of letters that still run inward, 0 to 1.</param>
/// <param name="Says">Where the thread is cut, in a few words.</param>
internal sealed record LineStep(int Line, int Trims, double LineIndex, string Says);

/// <summary>
/// The steps in which the worst inward text line can be cut apart: once at the center, between words, at every letter.
/// They are priced letter by letter, also where the thread joins the letters into one element that only a digitizer
/// can take apart.
/// </summary>
internal sealed class LineSteps
{
    private readonly PlanningTable _table;
    private readonly IReadOnlyList<Letter[]> _threads;
    private readonly int _firstSide;

    private LineSteps(PlanningTable table, IReadOnlyList<int> order, int line)
    {
        _table = table;
        var place = OrderShares.Places(order);
        _threads =
        [
            .. from at in table.Subject.Lines.Lines[line]
               orderby place[at.Element], at.First
               group at by table.Elements[at.Element].Thread into thread
               select thread.DistinctBy(at => at.FromSeam).Select((at, sewn) => new Letter(at, sewn)).ToArray(),
        ];
        _firstSide = _threads.SelectMany(letters => letters).Select(letter => letter.Side).FirstOrDefault(side => side != 0);
    }

    /// <param name="table">Elements and their blocks.</param>
    /// <param name="order">The order that is proposed.</param>
    /// <param name="rules">What the order rules say of it.</param>
    internal static IReadOnlyList<LineStep> Of(PlanningTable table, IReadOnlyList<int> order, IReadOnlyList<OrderRuleResult> rules) =>
        rules.SelectMany(rule => rule.Lines).FirstOrDefault() is { } worst ? [.. new LineSteps(table, order, worst.Line).All(worst)] : [];

    private IEnumerable<LineStep> All(InwardLine line)
    {
        var inward = line.Share;
        (string Says, Func<Letter, (int, int)> Unit)[] steps =
        [
            ("Cut at the center, one half still inward", letter => (HalfOf(letter), 0)),
            ("Trimmed between words", WordOf),
            ("Every letter trimmed", PlaceOf),
        ];
        foreach (var (says, unit) in steps)
        {
            Letter[][] threads = [.. _threads.Select(letters => letters.OrderBy(unit).ToArray())];
            var share = InwardShare(threads);
            if (share >= inward)
                continue;
            inward = share;
            yield return new(line.Line, threads.Sum(TrimsIn) - _threads.Sum(TrimsIn), share, says);
        }
    }

    /// <summary>The half that was sewn first comes last; the middle letter goes with the other one.</summary>
    private int HalfOf(Letter letter) => letter.Side == _firstSide ? 1 : 0;

    private (int, int) PlaceOf(Letter letter) => letter.Side == 0 ? (-1, 0) : (HalfOf(letter), letter.Distance);

    private (int, int) WordOf(Letter letter) => _threads.SelectMany(letters => letters)
        .Where(other => other.At.Word == letter.At.Word).Min(PlaceOf);

    private int TrimsIn(Letter[] letters) => letters.Zip(letters.Skip(1)).Count(pair =>
        pair.Second.Sewn != pair.First.Sewn + 1 || !IsOneThread(pair.First.At.Element, pair.Second.At.Element));

    private bool IsOneThread(int first, int second) =>
        first == second || _table.Behind[(first * _table.Count) + second] == Adjacency.Joined;

    private static double InwardShare(Letter[][] threads)
    {
        var (all, wrong) = (0, 0);
        foreach (var letters in threads)
        {
            for (var first = 0; first < letters.Length; first++)
            {
                for (var second = first + 1; second < letters.Length; second++)
                {
                    var isWrong = LinePairs.IsOutside(letters[first].At, letters[second].At);
                    all += isWrong || LinePairs.IsOutside(letters[second].At, letters[first].At) ? 1 : 0;
                    wrong += isWrong ? 1 : 0;
                }
            }
        }

        return all == 0 ? 0 : Math.Round((double)wrong / all, 4, MidpointRounding.AwayFromZero);
    }

    /// <param name="At">Where it stands.</param>
    /// <param name="Sewn">Its number among the letters of its thread as sewn.</param>
    private sealed record Letter(LinePlace At, int Sewn)
    {
        /// <summary>-1 or 1; 0 in the middle.</summary>
        internal int Side => At.IsCenter ? 0 : Math.Sign(At.FromSeam);

        internal int Distance => Math.Abs(At.FromSeam);
    }
}
