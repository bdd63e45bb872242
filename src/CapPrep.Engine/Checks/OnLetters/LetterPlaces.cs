using CapPrep.Engine.Lettering;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>Letters and lines of letters as places: the box on the cap, and where in the tape they are sewn.</summary>
internal static class LetterPlaces
{
    /// <summary>Penetrations between two strokes of one letter: its underlay and ties.</summary>
    private const int MostBetweenStrokes = 60;

    private const int MostElements = 20;

    /// <summary>One letter: its box, and its longest part that is sewn in one go.</summary>
    internal static Place PlaceOf(this Subject subject, Glyph glyph)
    {
        var (first, last) = SewnTogether(glyph.Strokes).OrderByDescending(part => part.Last - part.First).First();
        return subject.PlaceOf(first, last) with { BoxMm = glyph.Box.ToMillimeters(), Elements = Numbers(glyph.Elements) };
    }

    /// <summary>A letter and the next one of its line.</summary>
    internal static Place PlaceOf(this Subject subject, Glyph glyph, Glyph next)
    {
        var (one, other) = (subject.PlaceOf(glyph), subject.PlaceOf(next));
        return one with
        {
            BoxMm = glyph.Box.Union(next.Box).ToMillimeters(),
            Elements = Numbers([.. glyph.Elements.Concat(next.Elements).Distinct().Order()]),
            Blocks = [.. one.Blocks.Concat(other.Blocks).Distinct().Order()],
            Stitches = new(
                Math.Min(one.Stitches!.First, other.Stitches!.First),
                Math.Max(one.Stitches.Last, other.Stitches.Last)),
        };
    }

    /// <summary>The whole line.</summary>
    internal static Place PlaceOf(this Subject subject, TextLine line)
    {
        var strokes = line.Glyphs.SelectMany(glyph => glyph.Strokes).ToArray();
        var (first, last) = (strokes.Min(stroke => stroke.First), strokes.Max(stroke => stroke.Last));
        return new Place(PlaceKind.CapFront)
        {
            BoxMm = line.Box.ToMillimeters(),
            Elements = Numbers(line.Elements),
            Blocks = [.. strokes.Select(stroke => subject.Stitches.Block[stroke.First]).Distinct().Order()],
            Stitches = new(first + 1, last + 1),
        };
    }

    private static IEnumerable<StitchRange> SewnTogether(IReadOnlyList<StitchRange> strokes)
    {
        var part = strokes[0];
        foreach (var stroke in strokes.Skip(1))
        {
            if (stroke.First - part.Last <= MostBetweenStrokes)
            {
                part = part with { Last = Math.Max(part.Last, stroke.Last) };
                continue;
            }

            yield return part;
            part = stroke;
        }

        yield return part;
    }

    private static int[] Numbers(IReadOnlyList<int> elements) =>
        elements.Count > MostElements ? [] : [.. elements.Select(element => element + 1)];
}
