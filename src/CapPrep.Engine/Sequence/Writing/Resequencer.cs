using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence.Writing;

/// <summary>Writes a tape in the order of a plan, for a machine.</summary>
public sealed class Resequencer
{
    private readonly StitchSequence _received;
    private readonly SewPlan _plan;
    private readonly RepairSettings _settings;
    private readonly PlanSpan[] _elements;
    private readonly TrimMoves _trims;
    private readonly List<TapeMove> _moves = [];

    private Resequencer(StitchSequence received, SewPlan plan, RepairSettings settings)
    {
        (_received, _plan, _settings) = (received, plan, settings);
        _elements = [.. plan.Spans.Where(span => span.Element is not null)];
        _trims = new(settings.TrimJumps, settings.TrimPattern, settings.MaxMove, received.Extents().Center.X);
    }

    private TapePoint At => _moves.Count == 0 ? _settings.StartAndEnd ?? TapePoint.Origin : _moves[^1].To;

    /// <summary>The whole file. Whether it is right is for the loss check to say.</summary>
    /// <param name="received">The received penetrations.</param>
    /// <param name="plan">Spans, order, joints and ties.</param>
    /// <param name="settings">How the tape is written; without a start point it begins and ends at (0, 0).</param>
    public static byte[] Apply(StitchSequence received, SewPlan plan, RepairSettings settings)
    {
        var start = settings.StartAndEnd ?? TapePoint.Origin;
        var moves = Moves(received, plan, settings)
            .Select(move => move with { To = settings.Turn180 ? (move.To - start).Turned() : move.To - start });
        return TapeWriter.Write(new(settings.Label, [.. moves]) { MaxMove = settings.MaxMove });
    }

    /// <summary>What the machine does, in units of the received tape.</summary>
    internal static IReadOnlyList<TapeMove> Moves(StitchSequence received, SewPlan plan, RepairSettings settings)
    {
        var resequencer = new Resequencer(received, plan, settings);
        foreach (var step in plan.Steps)
            resequencer.Sew(step);
        var end = settings.StartAndEnd ?? TapePoint.Origin;
        if (resequencer.At != end)
            resequencer._moves.Add(new(RecordKind.Jump, end));
        return resequencer._moves;
    }

    private void Sew(PlanStep step)
    {
        var element = _elements[step.Element];
        Reach(step, step.TieIn.Count > 0 ? step.TieIn[0] : _received.At(element.First), element);
        foreach (var tie in step.TieIn.Skip(1))
            Stitch(tie);
        if (step.TieIn.Count > 0)
            Stitch(_received.At(element.First));
        for (var i = element.First + 1; i <= element.Last; i++)
            Edge(i);
        foreach (var tie in step.TieOff)
            Stitch(tie);
    }

    /// <summary>Gets to the first penetration of an element and sews it.</summary>
    private void Reach(PlanStep step, TapePoint entry, PlanSpan element)
    {
        switch (step.Connection)
        {
            case Connection.KeptLink:
                for (var i = LinkBefore(element).First; i <= element.First; i++)
                    Edge(i);
                break;
            case Connection.Cut:
                _moves.AddRange(_trims.Between(At, entry));
                break;
            case Connection.NewLink:
                Stitch(entry);
                break;
            default:
                if (step.Connection == Connection.Stop)
                    _moves.Add(new(RecordKind.ColorStop, At));
                if (At != entry)
                    _moves.Add(new(RecordKind.Jump, entry));
                Stitch(entry);
                break;
        }
    }

    private PlanSpan LinkBefore(PlanSpan element) => _plan.Spans.First(span => span.Element is null && span.Last + 1 == element.First);

    private void Stitch(TapePoint to) => _moves.Add(new(RecordKind.Stitch, to));

    /// <summary>A received stitch with the jump records that lead to it; more of them where the machine needs it.</summary>
    private void Edge(int index)
    {
        var (from, to) = (At, _received.At(index));
        var records = Math.Max(_received.Jumps[index] + 1, MoveSplit.RecordsFor((to - from).Reach, _settings.MaxMove));
        var way = new MoveSplit(from, to, records);
        for (var k = 1; k < records; k++)
            _moves.Add(new(RecordKind.Jump, way.At(k)));
        Stitch(to);
    }
}
