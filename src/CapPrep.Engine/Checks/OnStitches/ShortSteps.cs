using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>The short stitches of a design, without those that are meant to be short.</summary>
internal sealed class ShortSteps
{
    private readonly double _belowMm;

    internal ShortSteps(Subject subject, double belowMm, double tinyBelowMm)
    {
        (_belowMm, Spans) = (belowMm, SpanMap.Of(subject));
        var all = Enumerable.Range(1, subject.Stitches.Count - 1).Where(Spans.IsStep).ToArray();
        int[] steps = [.. all.Where(IsShort)];
        Points = [.. steps.SelectMany(step => new[] { step - 1, step }).Distinct()];
        TinyShare = all.Length == 0 ? 0 : steps.Count(step => Spans.StepMm(step) < tinyBelowMm) / (double)all.Length;
    }

    internal SpanMap Spans { get; }

    /// <summary>Penetrations at either end of a short stitch, counted from 0, rising.</summary>
    internal IReadOnlyList<int> Points { get; }

    /// <summary>Share of all stitches that are tiny, 0 to 1.</summary>
    internal double TinyShare { get; }

    /// <summary>The penetration belongs to satin or fill.</summary>
    internal bool IsInRows(int point) => Spans.At(point).Class is StitchClass.Satin or StitchClass.Fill;

    private bool IsShort(int step) => IsBelow(step) && !IsOfTie(step) && !IsTurn(step);

    private bool IsOfTie(int step) => Spans.IsTie(step) || Spans.IsTie(step - 1);

    /// <summary>One short stitch between two longer ones of the same rows.</summary>
    private bool IsTurn(int step) => IsInRows(step) && IsInRows(step - 1) && !IsBelow(step - 1) && !IsBelow(step + 1);

    private bool IsBelow(int step) => Spans.IsStep(step) && Spans.StepMm(step) < _belowMm;
}
