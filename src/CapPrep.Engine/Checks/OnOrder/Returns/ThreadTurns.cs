using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnOrder.Returns;

/// <summary>One thread at a time: what is sewn from one change of block to the next.</summary>
/// <param name="Block">Received block, from 1.</param>
/// <param name="Thread">Number of its thread.</param>
/// <param name="Elements">Indices, in the order they are sewn.</param>
internal sealed record ThreadTurn(int Block, int Thread, IReadOnlyList<int> Elements);

/// <summary>The turns of all threads in the order that is judged, and which of them must wait for which.</summary>
internal sealed class ThreadTurns
{
    private readonly IReadOnlyList<ThreadTurn> _turns;
    private readonly bool[,] _waits;
    private readonly int[] _stops;

    private ThreadTurns(IReadOnlyList<ThreadTurn> turns, bool[,] waits, int[] stops) => (_turns, _waits, _stops) = (turns, waits, stops);

    internal int Count => _turns.Count;

    internal ThreadTurn this[int turn] => _turns[turn];

    internal static ThreadTurns Of(Subject subject)
    {
        ThreadTurn[] turns = [.. TurnsOf(subject)];
        var turnOf = new int[subject.Reading.Elements.Count];
        for (var turn = 0; turn < turns.Length; turn++)
        {
            foreach (var element in turns[turn].Elements)
                turnOf[element] = turn;
        }

        var waits = new bool[turns.Length, turns.Length];
        foreach (var pair in subject.Reading.MustFollow)
            waits[turnOf[pair.Before], turnOf[pair.After]] = true;
        return new(turns, waits, [.. subject.DeliberateStops.Select(stop => stop.Behind)]);
    }

    /// <summary>The thread of a turn was on before, and both turns could be one.</summary>
    internal bool NeedNot(int turn) =>
        Enumerable.Range(0, turn).Where(earlier => _turns[earlier].Thread == _turns[turn].Thread).Select(earlier => (int?)earlier).LastOrDefault() is { } before
        && turn - before > 1
        && !IsStopped(before, turn)
        && !AreFinishedOneByOne(before, turn)
        && !LiesBetween(before, turn);

    private static IEnumerable<ThreadTurn> TurnsOf(Subject subject)
    {
        var elements = subject.Reading.Elements;
        var open = new List<int>();
        foreach (var element in subject.SewnOrder)
        {
            if (open.Count > 0 && elements[open[0]].Block != elements[element].Block)
            {
                yield return TurnOf(elements, open);
                open = [];
            }

            open.Add(element);
        }

        if (open.Count > 0)
            yield return TurnOf(elements, open);
    }

    private static ThreadTurn TurnOf(IReadOnlyList<Element> elements, List<int> open) =>
        new(elements[open[0]].Block, elements[open[0]].Thread, open);

    private bool IsStopped(int before, int turn)
    {
        var (one, other) = (_turns[before].Block, _turns[turn].Block);
        return _stops.Any(stop => stop >= Math.Min(one, other) && stop < Math.Max(one, other));
    }

    /// <summary>Both lie on what is sewn right before them, or under what is sewn right behind them.</summary>
    private bool AreFinishedOneByOne(int before, int turn) =>
        (before > 0 && _waits[before - 1, before] && _waits[turn - 1, turn])
        || (turn + 1 < Count && _waits[before, before + 1] && _waits[turn, turn + 1]);

    /// <summary>Something must follow the one and come before the other.</summary>
    private bool LiesBetween(int before, int turn)
    {
        var reached = new bool[Count];
        for (var middle = before + 1; middle < turn; middle++)
        {
            reached[middle] = _waits[before, middle] || Enumerable.Range(before + 1, middle - before - 1).Any(earlier => reached[earlier] && _waits[earlier, middle]);
            if (reached[middle] && _waits[middle, turn])
                return true;
        }

        return false;
    }
}
