using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>The typefaces one drawing uses.</summary>
internal sealed class Typefaces : IDisposable
{
    private readonly Dictionary<SheetFont, SKTypeface> _subsets = [];

    private Typefaces()
    {
    }

    /// <summary>Whole faces, shared by all drawings.</summary>
    public static Typefaces Whole { get; } = new();

    /// <summary>Faces that hold what the texts of one sheet need and no more.</summary>
    public static Typefaces For(Sheet sheet)
    {
        var faces = new Typefaces();
        foreach (var texts in sheet.Marks.OfType<TextMark>().GroupBy(mark => mark.Font))
        {
            var glyphs = texts.SelectMany(mark => Shaper.Shape(SafeText.Clean(mark.Text), mark.Font).Glyphs).Select(glyph => glyph.Id);
            faces._subsets[texts.Key] = FontFile.Open(FontSubset.Of(FontFile.Of(texts.Key).Bytes, glyphs));
        }

        return faces;
    }

    public SKTypeface Of(SheetFont font) => _subsets.TryGetValue(font, out var subset) ? subset : FontFile.Of(font).Typeface;

    public void Dispose()
    {
        foreach (var subset in _subsets.Values)
            subset.Dispose();
    }
}
