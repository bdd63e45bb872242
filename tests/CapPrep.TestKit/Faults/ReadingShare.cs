using CapPrep.Engine;
using CapPrep.Engine.Pieces;
using CapPrep.FaultCorpus;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.TestKit.Faults;

/// <summary>How many stitches were read as what they are.</summary>
/// <param name="RightClass">Of all stitches: read as the class they were sewn as, or as what hides under it.</param>
/// <param name="Seen">Stitches that are meant to be seen; ways and underlay may belong to nobody.</param>
/// <param name="RightElement">Of those: in the element that is their part's own.</param>
public readonly record struct ReadingShare(int Stitches, int RightClass, int Seen, int RightElement)
{
    public double ClassShare => Stitches == 0 ? 0 : (double)RightClass / Stitches;

    public double ElementShare => Seen == 0 ? 0 : (double)RightElement / Seen;

    public static ReadingShare operator +(ReadingShare a, ReadingShare b) =>
        new(a.Stitches + b.Stitches, a.RightClass + b.RightClass, a.Seen + b.Seen, a.RightElement + b.RightElement);

    /// <summary>Compares stitch by stitch; a tape whose records were tampered with is not compared.</summary>
    public static ReadingShare Of(CorpusTape tape, Preparation read)
    {
        var count = tape.Needles.Count;
        var spans = new Span?[count];
        foreach (var span in read.Reading.Spans.Where(span => span.Last < count))
        {
            for (var k = span.First; k <= span.Last; k++)
                spans[k] = span;
        }

        var rightClass = tape.Truth.Spans.Sum(truth => Enumerable.Range(truth.First, truth.Last - truth.First + 1)
            .Count(k => spans[k] is { } span && IsRight(truth, span)));
        var seen = tape.Truth.Spans.Where(truth => truth.Purpose == Purpose.Top).Sum(truth => truth.Last - truth.First + 1);
        return new(count, rightClass, seen, RightElements(tape, spans));
    }

    private static bool IsRight(TruthSpan truth, Span read) => truth.Purpose switch
    {
        Purpose.Tie => true,
        Purpose.Underlay or Purpose.Travel => read.Role is SpanRole.Underlay or SpanRole.HiddenTravel or SpanRole.Tie || read.Class == ClassOf(truth.As),
        _ => read.Class == ClassOf(truth.As) || (truth.As == SewnAs.Fill && read.Class == StitchClass.OpenFill)
            || (truth.As == SewnAs.Running && read.Class == StitchClass.Retraced),
    };

    private static StitchClass ClassOf(SewnAs sewn) => sewn switch
    {
        SewnAs.Satin => StitchClass.Satin,
        SewnAs.Fill => StitchClass.Fill,
        _ => StitchClass.Running,
    };

    /// <summary>Stitches whose element and part are each other's largest share.</summary>
    private static int RightElements(CorpusTape tape, Span?[] spans)
    {
        var pairs = tape.Truth.Spans
            .Where(truth => truth.Purpose == Purpose.Top)
            .SelectMany(truth => Enumerable.Range(truth.First, truth.Last - truth.First + 1).Select(k => (Part: truth.Element, spans[k]?.Element)))
            .Where(pair => pair.Element is not null)
            .GroupBy(pair => pair)
            .Select(group => (group.Key.Part, group.Key.Element, Count: group.Count()))
            .ToList();
        var ofElement = pairs.GroupBy(pair => pair.Element).ToDictionary(group => group.Key!.Value, group => group.MaxBy(pair => pair.Count).Part);
        var ofPart = pairs.GroupBy(pair => pair.Part).ToDictionary(group => group.Key, group => group.MaxBy(pair => pair.Count).Element);
        return pairs.Where(pair => ofElement[pair.Element!.Value] == pair.Part && ofPart[pair.Part] == pair.Element).Sum(pair => pair.Count);
    }
}
