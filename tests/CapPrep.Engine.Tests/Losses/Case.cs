using CapPrep.Engine.Losses;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tests.Losses;

/// <summary>
/// Five small columns in two colors, and a plan that sews them in another order: the link of the first two is cut,
/// the third is joined to the second by a new stitch. Sizes in tape units.
/// </summary>
internal sealed record Case
{
    internal static readonly Case Right = new();

    internal Tape Received { get; init; } = Stitched.Of(Moves());

    internal SewPlan Plan { get; init; } = PlanOf([2, 1, 0], [3, 4]);

    internal RepairSettings Settings { get; init; } = new() { Label = "TEST" };

    internal IReadOnlyList<NeedleStep> NeedlePlan { get; init; } = Needles((1, 6), (2, 4));

    /// <summary>What is done to the written tape.</summary>
    internal Func<IReadOnlyList<TapeMove>, IEnumerable<TapeMove>> Spoil { get; init; } = moves => moves;

    /// <summary>What is done to the written file.</summary>
    internal Func<byte[], byte[]> SpoilFile { get; init; } = file => file;

    internal StitchSequence Stitches => StitchSequence.Of(Received, 3);

    internal static SewPlan PlanOf(int[] first, int[] second, bool swapBlocks = false)
    {
        var stitches = StitchSequence.Of(Stitched.Of(Moves()), 3);
        var spans = Spans();
        (int Block, int[] Elements)[] blocks = swapBlocks ? [(2, second), (1, first)] : [(1, first), (2, second)];
        var steps = blocks.SelectMany((block, at) => block.Elements.Select((element, place) => Step(stitches, spans, element,
            place > 0 ? (element == 1 && block.Elements[place - 1] == 2 ? Connection.NewLink : Connection.Cut)
            : at == 0 ? Connection.None : Connection.Stop))).ToArray();
        return new()
        {
            Spans = spans,
            Steps = steps,
            MustFollow = [],
            Relaxed = [],
            Blocks = [.. blocks.Select((block, at) => new PlanBlock(at + 1, block.Block, block.Block, false, steps
                .Where(step => block.Elements.Contains(step.Element))
                .Sum(step => PointsOf(spans, step.Element) + step.TieIn.Count + step.TieOff.Count)) { Elements = block.Elements })],
        };
    }

    internal static IReadOnlyList<NeedleStep> Needles(params (int Block, int Needle)[] steps) =>
        [.. steps.Select((step, at) => new NeedleStep(at + 1, step.Block, step.Needle, null, 0, StopAction.None))];

    internal LossCheckResult Check()
    {
        var moves = Spoil(Resequencer.Moves(Stitches, Plan, Settings)).ToArray();
        var start = Settings.StartAndEnd ?? TapePoint.Origin;
        var file = TapeWriter.Write(new("TEST", [.. moves.Select(move => move with { To = Settings.Turn180 ? (move.To - start).Turned() : move.To - start })]));
        return LossCheck.Of(new()
        {
            Received = Received,
            Written = SpoilFile(file),
            Plan = Plan,
            Settings = Settings,
            NeedleOfBlock = [6, 4],
            NeedlePlan = [.. NeedlePlan.Select(step => step with { Stitches = Plan.Blocks.FirstOrDefault(block => block.Step == step.Step)?.Stitches ?? 0 })],
            Field = new(-400, -200, 400, 200),
        });
    }

    internal string Failed() => string.Join(' ', Check().Clauses.Where(clause => !clause.Passed).Select(clause => clause.Clause));

    private static int PointsOf(PlanSpan[] spans, int element)
    {
        var span = spans.Single(span => span.Element == element);
        return span.Last - span.First + 1;
    }

    /// <summary>Ties go along the first or last stitch, only where the thread is cut anew.</summary>
    private static PlanStep Step(StitchSequence stitches, PlanSpan[] spans, int element, Connection connection)
    {
        var span = spans.Single(span => span.Element == element);
        return new(
            element,
            connection,
            TieIn: element == 1 && connection == Connection.Cut ? Tie(stitches, span.First, span.First + 1, isIn: true) : [],
            TieOff: element is 0 or 1 ? Tie(stitches, span.Last, span.Last - 1, isIn: false) : []);
    }

    private static TapePoint[] Tie(StitchSequence stitches, int end, int next, bool isIn)
    {
        var at = stitches.At(end);
        var tip = at + new TapePoint(7 * Math.Sign(stitches.At(next).X - at.X), 0);
        return isIn ? [at, tip, at, tip] : [tip, at, tip, at];
    }

    private static PlanSpan[] Spans()
    {
        int[] lengths = [Column(0, 0).Count() + 1, 2, Column(0, 0).Count(), Column(0, 0).Count(), Column(0, 0).Count(), Column(0, 0).Count()];
        int?[] elements = [0, null, 1, 2, 3, 4];
        var first = 0;
        var spans = new PlanSpan[lengths.Length];
        for (var i = 0; i < lengths.Length; first += lengths[i++])
            spans[i] = new(first, first + lengths[i] - 1, elements[i]);
        return spans;
    }

    private static IEnumerable<TapeMove> Moves()
    {
        foreach (var move in Sewn(Column(-100, 0)).SelectMany((move, i) => i switch
        {
            3 => [move, move],
            5 => [new(RecordKind.Jump, move.To + new TapePoint(-10, 0)), move],
            _ => new[] { move },
        }))
            yield return move;
        foreach (var move in Sewn([new(-40, 30), new(-30, 20)]).Concat(Sewn(Column(-20, 0))))
            yield return move;
        foreach (var move in Cut(Column(-20, 0).Last(), Column(-20, -70).First()).Concat(Sewn(Column(-20, -70))))
            yield return move;
        yield return new(RecordKind.ColorStop, Column(-20, -70).Last());
        foreach (var move in Sewn(Column(-5, 10)).Concat(Cut(Column(-5, 10).Last(), Column(-80, -60).First())).Concat(Sewn(Column(-80, -60))))
            yield return move;
        yield return new(RecordKind.Jump, TapePoint.Origin);
    }

    /// <summary>A column 4 mm wide and 6 mm high, sewn upward.</summary>
    private static IEnumerable<TapePoint> Column(int left, int bottom) => Enumerable.Range(0, 31)
        .Select(i => new TapePoint(left + (i % 2 == 0 ? 0 : 40), bottom + (2 * i)));

    private static IEnumerable<TapeMove> Sewn(IEnumerable<TapePoint> points) => points.Select(point => new TapeMove(RecordKind.Stitch, point));

    private static IEnumerable<TapeMove> Cut(TapePoint from, TapePoint to) =>
        new TrimMoves(3, TrimPattern.OutAndBack, Tape.MaxMove, 0).Between(from, to).SkipLast(1);
}
