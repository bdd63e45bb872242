using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence.Writing;

/// <summary>Makes the plan of an order: spans, joints, ties and color blocks.</summary>
internal sealed class PlanMaker
{
    private readonly PlanningTable _table;
    private readonly IReadOnlyList<int> _order;
    private readonly IReadOnlyList<RelaxedPair> _relaxed;

    private PlanMaker(PlanningTable table, IReadOnlyList<int> order, IReadOnlyList<RelaxedPair> relaxed) =>
        (_table, _order, _relaxed) = (table, order, relaxed);

    private StitchSequence Stitches => _table.Request.Stitches;

    internal static SewPlan Of(PlanningTable table, IReadOnlyList<int> order, IReadOnlyList<RelaxedPair> relaxed) =>
        new PlanMaker(table, order, relaxed).Make();

    private SewPlan Make()
    {
        var spans = Spans().ToList();
        PlanStep[] steps = [.. Enumerable.Range(0, _order.Count).Select(Step)];
        return new()
        {
            Spans = spans,
            Steps = steps,
            MustFollow = [.. _table.Request.Reading.MustFollow.Select(pair => (pair.Before, pair.After))],
            Relaxed = _relaxed,
            Blocks = [.. Blocks(spans, steps)],
        };
    }

    private IEnumerable<PlanSpan> Spans()
    {
        var next = 0;
        foreach (var element in _table.Elements)
        {
            if (element.Index > 0 && Neighbors.IsLinked(_table.Request, element.Index - 1, element.Index))
                yield return new(next, element.First - 1, null);
            yield return new(element.First, element.Last, element.Index);
            next = element.Last + 1;
        }
    }

    private PlanStep Step(int at)
    {
        var element = _table.Elements[_order[at]];
        var connection = at == 0 ? Connection.None : ConnectionOf(_order[at - 1], _order[at]);
        var next = at == _order.Count - 1 ? Connection.Stop : ConnectionOf(_order[at], _order[at + 1]);
        var ties = new Ties(Stitches, element);
        var tiesIn = IsCut(connection) && Stitches.Relations[element.First] == Relation.Thread;
        var tiesOff = IsCut(next) && element.Last + 1 < Stitches.Count && Stitches.Relations[element.Last + 1] == Relation.Thread;
        return new(
            element.Index,
            connection,
            tiesIn && !_table.Request.MachineTies ? ties.In() : [],
            tiesOff && !_table.Request.MachineTies ? ties.Off() : []);
    }

    private Connection ConnectionOf(int first, int second) => Neighbors.ConnectionOf(_table, first, second);

    private static bool IsCut(Connection connection) => connection is Connection.None or Connection.Cut or Connection.Stop;

    private IEnumerable<PlanBlock> Blocks(IReadOnlyList<PlanSpan> spans, IReadOnlyList<PlanStep> steps)
    {
        var links = spans.Where(span => span.Element is null).ToDictionary(span => span.Last + 1, span => span.Last - span.First + 1);
        var seen = new HashSet<int>();
        var number = 0;
        for (var at = 0; at < steps.Count;)
        {
            var (block, thread) = (_table.Blocks[steps[at].Element], _table.Elements[steps[at].Element].Thread);
            PlanStep[] sewn = [.. steps.Skip(at).TakeWhile(step => _table.Blocks[step.Element] == block)];
            var received = sewn.Min(step => _table.Elements[step.Element].Block);
            yield return new(++number, received, thread, !seen.Add(thread), sewn.Sum(step => Count(step, links)))
            {
                Elements = [.. sewn.Select(step => step.Element)],
            };
            at += sewn.Length;
        }
    }

    private int Count(PlanStep step, Dictionary<int, int> links)
    {
        var element = _table.Elements[step.Element];
        var link = step.Connection == Connection.KeptLink ? links[element.First] : 0;
        return element.Penetrations + link + step.TieIn.Count + step.TieOff.Count;
    }
}
