using CapPrep.Engine.Drafting;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>Short ways from drafted letters to the lines that are found.</summary>
internal static class Lines
{
    /// <summary>Lower case with and without ascenders and descenders, dots and closed openings.</summary>
    internal const string LowerCase = "abcdeghilmnoprstuv";

    internal static IReadOnlyList<TextLine> Of(Text line)
    {
        var draft = new Draft();
        line.Sew(draft);
        return Of(draft);
    }

    internal static IReadOnlyList<TextLine> Of(Draft draft) => Of(draft.ToTape("TEST"));

    internal static IReadOnlyList<TextLine> Of(Tape tape) => (Job.Clean with { Tape = tape }).Prepare().TextLines;

    /// <summary>The line of a text and the letters as they were sewn.</summary>
    internal static (TextLine Line, IReadOnlyList<DraftedLetter> Sewn) One(Text text)
    {
        var draft = new Draft();
        var sewn = text.Sew(draft);
        return (Of(draft).ShouldHaveSingleItem(), sewn);
    }

    /// <summary>The same letters of the same sizes, but for the rounding of a position.</summary>
    internal static void ShouldBeAlike(IReadOnlyList<TextLine> lines, IReadOnlyList<TextLine> others)
    {
        lines.Select(Kind).ShouldBe(others.Select(Kind));
        foreach (var (line, other) in lines.Zip(others))
        {
            line.LetterHeightMm.ShouldBe(other.LetterHeightMm, 0.05);
            line.StrokeWidthMm.ShouldBe(other.StrokeWidthMm, 0.05);
            line.Base.RiseMm.ShouldBe(other.Base.RiseMm, 0.05);
            line.Glyphs.Select(glyph => glyph.HeightMm).ShouldBe(other.Glyphs.Select(glyph => glyph.HeightMm), 0.05);
            line.Glyphs.Select(glyph => glyph.CounterMm ?? 0).ShouldBe(other.Glyphs.Select(glyph => glyph.CounterMm ?? 0), 0.05);
            line.Glyphs.Select(glyph => glyph.GapMm ?? 0).ShouldBe(other.Glyphs.Select(glyph => glyph.GapMm ?? 0), 0.05);
        }
    }

    private static (LetterMake, int, bool, bool, bool) Kind(TextLine line) =>
        (line.Make, line.Glyphs.Count, line.Base.IsArc, line.IsConnected, line.Sure);

    internal static TapePoint At(int x, int y) => new(x, y);
}
