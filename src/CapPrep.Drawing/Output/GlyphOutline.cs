using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Outlines of glyphs as SVG path data in font units, y downward; computed once per glyph.</summary>
internal static class GlyphOutline
{
    private static readonly ConcurrentDictionary<(SheetFont, ushort), string> Known = new();

    public static string Data(SheetFont font, ushort glyph) => Known.GetOrAdd((font, glyph), key => Read(key.Item1, key.Item2));

    private static string Read(SheetFont font, ushort glyph)
    {
        var file = FontFile.Of(font);
        using var skia = new SKFont(file.Typeface, file.UnitsPerEm, 1, 0) { Hinting = SKFontHinting.None, LinearMetrics = true };
        using var path = skia.GetGlyphPath(glyph);
        if (path is null)
            return "";
        var data = new StringBuilder();
        using var steps = path.CreateRawIterator();
        var points = new SKPoint[4];
        for (var verb = steps.Next(points); verb != SKPathVerb.Done; verb = steps.Next(points))
            Step(data, verb, points);
        return data.ToString();
    }

    private static void Step(StringBuilder data, SKPathVerb verb, SKPoint[] points)
    {
        switch (verb)
        {
            case SKPathVerb.Move:
                Add(data, 'M', points.AsSpan(0, 1));
                break;
            case SKPathVerb.Line:
                Add(data, 'L', points.AsSpan(1, 1));
                break;
            case SKPathVerb.Quad:
                Add(data, 'Q', points.AsSpan(1, 2));
                break;
            case SKPathVerb.Cubic:
                Add(data, 'C', points.AsSpan(1, 3));
                break;
            case SKPathVerb.Close:
                data.Append('Z');
                break;
            default:
                throw new InvalidOperationException($"A glyph outline holds a {verb} step.");
        }
    }

    private static void Add(StringBuilder data, char letter, ReadOnlySpan<SKPoint> points)
    {
        data.Append(letter);
        for (var i = 0; i < points.Length; i++)
            data.Append(CultureInfo.InvariantCulture, $"{(i > 0 ? " " : "")}{Rounded(points[i].X)} {Rounded(points[i].Y)}");
    }

    private static int Rounded(float units) => (int)Math.Round(units, MidpointRounding.AwayFromZero);
}
