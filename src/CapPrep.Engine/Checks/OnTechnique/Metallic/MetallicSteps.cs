using CapPrep.Engine.Checks.OnStitches;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnTechnique.Metallic;

/// <summary>Counts stitches by color block; ties, work over foam and the turns between the rows of a fill left out.</summary>
internal sealed class MetallicSteps(Subject subject, double belowMm)
{
    private readonly SpanMap _spans = SpanMap.Of(subject);

    /// <summary>Stitches of a block, the short ones among them, and the penetrations they lie between.</summary>
    internal (int Steps, int Short, int First, int Last) Of(int block)
    {
        int[] steps = [.. Enumerable.Range(1, subject.Stitches.Count - 1).Where(point => subject.Stitches.Block[point] == block && Counts(point))];
        return steps.Length == 0
            ? default
            : (steps.Length, steps.Count(point => _spans.StepMm(point) < belowMm), steps[0], steps[^1]);
    }

    private bool Counts(int point) =>
        _spans.IsStep(point) && !_spans.IsTie(point) && !_spans.IsTie(point - 1) && !subject.Foam.ContainsPoint(point) && !IsTurn(point);

    /// <summary>A short stitch between longer ones of the same fill.</summary>
    private bool IsTurn(int point) =>
        _spans.IsStepOf(StitchClass.Fill, point) && _spans.StepMm(point) < belowMm
        && _spans.IsStep(point - 1) && _spans.StepMm(point - 1) >= belowMm;
}
