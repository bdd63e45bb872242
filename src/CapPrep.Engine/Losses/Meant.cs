using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>One penetration as the plan wants it.</summary>
/// <param name="At">Where, in units of the received tape.</param>
/// <param name="Source">Index of the received penetration; null: a tie.</param>
/// <param name="Relation">How it is connected to the one before.</param>
/// <param name="Jumps">Jump records before it; counts with <see cref="Relation.Thread"/> only.</param>
/// <param name="Span">Index of its span in the plan; 0 without a plan.</param>
internal readonly record struct MeantPoint(TapePoint At, int? Source, Relation Relation, int Jumps, int Span);

/// <summary>The written tape as the plan wants it, worked out from the received penetrations and the plan alone.</summary>
internal sealed class Meant
{
    private readonly StitchSequence _received;
    private readonly IReadOnlyList<PlanSpan> _spans;
    private readonly int _maxMove;
    private readonly Dictionary<int, int> _elements = [];
    private readonly Dictionary<int, int> _linksByEnd = [];
    private readonly List<MeantPoint>? _points;

    private Meant(StitchSequence received, SewPlan? plan, int maxMove)
    {
        (_received, _spans, _maxMove) = (received, plan?.Spans ?? [], maxMove);
        if (plan is null)
            return;
        _points = [];
        for (var place = 0; place < _spans.Count; place++)
        {
            if (_spans[place].Element is { } element)
                _elements.TryAdd(element, place);
            else
                _linksByEnd.TryAdd(_spans[place].Last + 1, place);
        }

        Put(plan.Steps, _points);
    }

    internal int Count => _points?.Count ?? _received.Count;

    internal MeantPoint this[int index] =>
        _points?[index] ?? new(_received.At(index), index, _received.Relations[index], JumpsBefore(index), Span: 0);

    /// <param name="plan">Null: as received.</param>
    /// <param name="received">The received penetrations.</param>
    /// <param name="maxMove">Longest move of one record, tape units.</param>
    internal static Meant By(SewPlan? plan, StitchSequence received, int maxMove) => new(received, plan, maxMove);

    internal int CountOf(Relation relation) => _points?.Count(point => point.Relation == relation) ?? _received.Relations.Count(relation);

    /// <summary>Place of an element's span in the plan; null when the plan does not have it.</summary>
    internal int? PlaceOf(int element) => _elements.TryGetValue(element, out var place) ? place : null;

    /// <summary>Place of the link that leads to an element's span; null when the plan has none.</summary>
    internal int? LinkTo(in PlanSpan span) => _linksByEnd.TryGetValue(span.First, out var place) ? place : null;

    private void Put(IReadOnlyList<PlanStep> steps, List<MeantPoint> points)
    {
        foreach (var step in steps)
        {
            if (PlaceOf(step.Element) is not { } place)
                continue;
            PutWayTo(step, place, points);
            for (var i = _spans[place].First + 1; i <= _spans[place].Last; i++)
                points.Add(Sewn(i, Relation.Thread, JumpsBefore(i), place));
            foreach (var tie in step.TieOff)
                points.Add(new(tie, null, Relation.Thread, 0, place));
        }
    }

    /// <summary>Everything up to the first penetration of the element.</summary>
    private void PutWayTo(PlanStep step, int place, List<MeantPoint> points)
    {
        var first = _spans[place].First;
        if (step.Connection == Connection.KeptLink)
        {
            if (LinkTo(_spans[place]) is { } link)
            {
                for (var i = _spans[link].First; i <= _spans[link].Last; i++)
                    points.Add(Sewn(i, Relation.Thread, JumpsBefore(i), link));
            }

            points.Add(Sewn(first, Relation.Thread, JumpsBefore(first), place));
            return;
        }

        for (var k = 0; k < step.TieIn.Count; k++)
            points.Add(new(step.TieIn[k], null, k == 0 ? RelationTo(step) : Relation.Thread, 0, place));
        points.Add(Sewn(first, step.TieIn.Count > 0 ? Relation.Thread : RelationTo(step), 0, place));
    }

    private MeantPoint Sewn(int index, Relation relation, int jumps, int place) =>
        new(_received.At(index), index, relation, jumps, place);

    private static Relation RelationTo(PlanStep step) => step.Connection switch
    {
        Connection.None => Relation.First,
        Connection.Stop => Relation.Stop,
        Connection.Cut => Relation.Cut,
        _ => Relation.Thread,
    };

    /// <summary>The received jump records, or more where the machine needs more for the way.</summary>
    private int JumpsBefore(int index) => index == 0
        ? 0
        : Math.Max(_received.Jumps[index], MoveSplit.RecordsFor((_received.At(index) - _received.At(index - 1)).Reach, _maxMove) - 1);
}
