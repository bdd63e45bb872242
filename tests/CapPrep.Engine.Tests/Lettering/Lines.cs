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

    /// <summary>What does not change when a design is moved: kinds, numbers and sizes.</summary>
    internal static IReadOnlyList<string> Shapes(IReadOnlyList<TextLine> lines) =>
    [
        .. lines.Select(line => FormattableString.Invariant(
            $"{line.Make} {line.Glyphs.Count} {line.LetterHeightMm} {line.CapHeightMm} {line.StrokeWidthMm} {line.Base.IsArc} {line.IsConnected} {line.Sure} ")
            + string.Join(" ", line.Glyphs.Select(glyph => FormattableString.Invariant($"{glyph.HeightMm}/{glyph.CounterMm}/{glyph.GapMm}")))),
    ];

    internal static TapePoint At(int x, int y) => new(x, y);
}
