using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>What the stitches of a design are, asked by penetration counted from 0.</summary>
internal sealed class SpanMap
{
    private readonly DesignReading _reading;
    private readonly StitchSequence _stitches;
    private readonly int[] _span;

    private SpanMap(DesignReading reading, StitchSequence stitches)
    {
        (_reading, _stitches, _span) = (reading, stitches, new int[stitches.Count]);
        for (var index = 0; index < reading.Spans.Count; index++)
            _span.AsSpan(reading.Spans[index].First, reading.Spans[index].Penetrations).Fill(index);
    }

    /// <summary>False for tapes that are out of bounds: what their stitches are was not looked for.</summary>
    internal bool KnowsClasses => _reading.Limits.Count == 0 || _reading.Pieces.Count > 0;

    internal static SpanMap Of(Subject subject) => new(subject.Reading, subject.Stitches);

    internal Span At(int point) => _reading.Spans[_span[point]];

    internal bool IsTie(int point) => At(point).Role == SpanRole.Tie;

    /// <summary>The stitch to a penetration lies whole in one span of that class.</summary>
    internal bool IsStepOf(StitchClass @class, int point) => _span[point] == _span[point - 1] && At(point).Class == @class;

    /// <summary>
    /// A stitch leads from the penetration before to this one: thread lies between them, and the needle was not up.
    /// </summary>
    internal bool IsStep(int point) =>
        point > 0 && point < _stitches.Count && _stitches.Relations[point] == Relation.Thread && _stitches.Jumps[point] == 0;

    /// <summary>Length of the stitch to a penetration, mm.</summary>
    internal double StepMm(int point)
    {
        double dx = _stitches.X[point] - _stitches.X[point - 1], dy = _stitches.Y[point] - _stitches.Y[point - 1];
        return Math.Sqrt((dx * dx) + (dy * dy)) / Measures.Tenths.PerMillimeter;
    }
}
