using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.TestKit.Tapes.Letters;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

/// <summary>A line of letters as it was drafted, in the words of the engine: nothing of it is found.</summary>
internal static class KnownLine
{
    private const string LowerCase = "aceimnorsuvxzgpqyj";

    /// <param name="line">What was sewn.</param>
    /// <param name="letters">Where its letters came to lie on the tape.</param>
    /// <param name="onCap">From the tape to the cap, tape units.</param>
    /// <param name="elements">All elements of the design.</param>
    internal static TextLine Of(TextToSew line, IReadOnlyList<DraftedLetter> letters, TapePoint onCap, IReadOnlyList<Element> elements)
    {
        var glyphs = letters.Select((letter, i) => Glyph(line, letter, letters.ElementAtOrDefault(i + 1), onCap, elements)).ToArray();
        var mixed = glyphs.Select(glyph => glyph.HeightMm).Distinct().Count() > 1;
        return new TextLine
        {
            Index = 0,
            Thread = 1,
            Make = line.Work == LetterWork.Running ? LetterMake.Running : LetterMake.Satin,
            Base = Base(line, letters, onCap),
            Glyphs = glyphs,
            Elements = [.. glyphs.SelectMany(glyph => glyph.Elements).Distinct().Order()],
            Box = glyphs.Select(glyph => glyph.Box).Aggregate((sum, box) => sum.Union(box)),
            LetterHeightMm = glyphs.Min(glyph => glyph.HeightMm),
            CapHeightMm = mixed || glyphs[0].HeightMm == line.CapHeight / 10.0 ? line.CapHeight / 10.0 : null,
            XHeightMm = mixed ? line.XHeight / 10.0 : null,
            StrokeWidthMm = line.StrokeWidth / 10.0,
            IsConnected = false,
            IsTagline = true,
            Sure = true,
        };
    }

    private static Glyph Glyph(TextToSew line, DraftedLetter letter, DraftedLetter? next, TapePoint onCap, IReadOnlyList<Element> elements) => new()
    {
        Index = letter.Place,
        Box = letter.Box.Shift(onCap.X, onCap.Y),
        FromMm = letter.From / 10,
        ToMm = letter.To / 10,
        HeightMm = (LowerCase.Contains(letter.Letter) ? line.XHeight : line.CapHeight) / 10.0,
        StrokeWidthMm = line.StrokeWidth / 10.0,
        GapMm = next is null ? null : (next.From - letter.To) / 10,
        Strokes = [new StitchRange(letter.First, letter.Last)],
        Elements = [.. elements.Where(element => element.First <= letter.Last && element.Last >= letter.First).Select(element => element.Index)],
    };

    private static BaseLine Base(TextToSew line, IReadOnlyList<DraftedLetter> letters, TapePoint onCap)
    {
        var (start, end) = (At(line, letters[0].From, onCap), At(line, letters[^1].To, onCap));
        return new BaseLine
        {
            Start = start,
            End = end,
            CenterMm = line.Radius == 0 ? null : At(line with { Radius = 0 }, 0, onCap, -line.Radius),
            RadiusMm = line.Radius == 0 ? null : Math.Abs(line.Radius) / 10.0,
            RiseMm = Math.Sign(line.Radius),
            TiltDegrees = Math.Atan2(end.Y - start.Y, end.X - start.X) * 180 / Math.PI,
            LengthMm = (letters[^1].To - letters[0].From) / 10,
        };
    }

    private static PointMm At(TextToSew line, double along, TapePoint onCap, double up = 0)
    {
        var (x, y) = line.Radius == 0
            ? (along, up)
            : ((line.Radius + up) * Math.Sin(along / line.Radius), ((line.Radius + up) * Math.Cos(along / line.Radius)) - line.Radius);
        var (sine, cosine) = Math.SinCos(line.TiltDegrees * Math.PI / 180);
        return new(
            (line.Middle.X + onCap.X + (x * cosine) - (y * sine)) / 10,
            (line.Middle.Y + onCap.Y + (x * sine) + (y * cosine)) / 10);
    }
}
