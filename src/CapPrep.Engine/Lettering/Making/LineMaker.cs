using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Lettering.Search;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>A line of letters as the search found it, with the thread and make of its limbs.</summary>
internal sealed record FoundLine(LimbSet Set, Candidate Line)
{
    private Box Box { get; } = Line.Limbs.Select(limb => limb.Limb.Box).Aggregate((sum, box) => sum.Union(box));

    /// <summary>It is the underlay, or half of the strokes, of a line of the same thread: half of its box lies in the other's.</summary>
    public bool LiesOn(FoundLine other)
    {
        var width = Math.Min(Box.Right, other.Box.Right) - Math.Max(Box.Left, other.Box.Left);
        var height = Math.Min(Box.Top, other.Box.Top) - Math.Max(Box.Bottom, other.Box.Bottom);
        return Set.Thread == other.Set.Thread && width > 0 && height > 0 && 2L * width * height >= (long)Box.Width * Box.Height;
    }
}

/// <summary>Turns what was found into text lines.</summary>
internal sealed class LineMaker(DesignReading reading, CapPoints points)
{
    // Neighbors nearer than 0.1 mm are joined; in handwriting more than half are.
    private const double JoinedMm = 0.1;
    private const int JoinedShare = 60;

    /// <summary>From the lowest line up, then from left to right.</summary>
    public IReadOnlyList<TextLine> Make(IEnumerable<FoundLine> found)
    {
        TextLine[] lines =
        [
            .. found.Select(Line).OrderBy(line => line.Box.Bottom).ThenBy(line => line.Box.Left).ThenBy(line => line.Elements[0]),
        ];
        var design = points.BoxOf(0, points.Count - 1);
        return [.. lines.Select((line, index) => line with { Index = index, IsTagline = index == 0 && Tagline.Is(line, design) })];
    }

    private TextLine Line(FoundLine found)
    {
        var (line, levels) = (found.Line, found.Line.Levels);
        var glyphs = Glyphs(line);
        var isConnected = IsConnected(glyphs);
        return new()
        {
            Index = 0,
            Thread = found.Set.Thread,
            Make = found.Set.Make,
            Base = BaseLines.Of(line.Curve, line.Letters[0].Group.Reach.From, line.Letters[^1].Group.Reach.To),
            Glyphs = glyphs,
            Elements = [.. glyphs.SelectMany(glyph => glyph.Elements).Distinct().Order()],
            Box = glyphs.Select(glyph => glyph.Box).Aggregate((sum, box) => sum.Union(box)),
            LetterHeightMm = Fine.Millimeters(levels.Low),
            CapHeightMm = levels.HasTwo ? Fine.Millimeters(levels.High) : null,
            XHeightMm = levels.HasTwo ? Fine.Millimeters(levels.Low) : null,
            StrokeWidthMm = Fine.Millimeters(Median.Of([.. line.Limbs.Select(limb => limb.Limb.Width)])),
            IsConnected = isConnected,
            IsTagline = false,
            Sure = Certainty.IsSure(found.Set.Make, line, isConnected),
        };
    }

    private IReadOnlyList<Glyph> Glyphs(Candidate line)
    {
        IReadOnlyList<Stretch>[] threads = [.. line.Letters.Select(letter => Threads.Of(letter, points))];
        var gaps = new Gaps(line.Curve, line.Levels).Of(line.Letters, threads);
        var maker = new GlyphMaker(reading);
        return [.. line.Letters.Select((letter, index) => maker.Of(letter, index, threads[index], gaps[index]))];
    }

    private static bool IsConnected(IReadOnlyList<Glyph> glyphs) =>
        100 * glyphs.Count(glyph => glyph.GapMm <= JoinedMm) >= JoinedShare * (glyphs.Count - 1);
}
