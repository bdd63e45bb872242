using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>
/// Finds stitches that only hold cloth and backing together: an open line or net over at least half of the design's
/// box with little thread, that is covered later (tack-down) or sewn in long stitches throughout and taken out again
/// (basting). It is the lesser part of the stitches. Common practice, no source.
/// </summary>
internal static class HoldingSpans
{
    internal static IEnumerable<Span> Of(Subject subject, RuleInForce rule)
    {
        var stitches = subject.Stitches;
        var share = rule.Parameter("holdingBoxShare");
        var threadPerArea = rule.Parameter("holdingThreadPerAreaMm");
        var bastingMm = rule.Parameter("bastingStitchMm");
        var design = Area(stitches.Extents());
        return subject.Reading.Spans.Where(span =>
            IsOpen(span)
            && 2 * span.Penetrations < stitches.Count
            && Area(stitches.BoxOf(new(span.First, span.Last))) is var area
            && area >= share * design
            && stitches.LengthOf(new(span.First, span.Last)) <= threadPerArea * area * Fine.PerMillimeter
            && (IsHidden(span) || MedianStepMm(stitches, span) >= bastingMm));
    }

    private static bool IsOpen(Span span) => span.Class is not (StitchClass.Satin or StitchClass.Fill);

    private static bool IsHidden(Span span) => span.Role is SpanRole.Underlay or SpanRole.HiddenTravel;

    /// <summary>Square millimeters.</summary>
    private static double Area(Box box) => box.ToMillimeters() is var mm ? mm.Width * mm.Height : 0;

    private static double MedianStepMm(StitchSequence stitches, Span span)
    {
        if (span.Penetrations < 2)
            return 0;
        var lengths = Enumerable.Range(span.First + 1, span.Penetrations - 1)
            .Select(point => (int)Fine.Length(stitches.At(point) - stitches.At(point - 1)))
            .ToArray();
        return Fine.Millimeters(Median.Of(lengths));
    }
}
