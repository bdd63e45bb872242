using CapPrep.Drawing.Sheets;
using HarfBuzzSharp;
using Buffer = HarfBuzzSharp.Buffer;

namespace CapPrep.Drawing.Fonts;

/// <summary>One glyph of a shaped line, in font units, y upward.</summary>
/// <param name="Id">0: the face lacks the character, and a box is drawn in its place.</param>
/// <param name="Cluster">Index of its first character in the text.</param>
/// <param name="X">Where its origin lies from the left end of the line.</param>
/// <param name="Advance">How far the pen goes on.</param>
internal readonly record struct Glyph(ushort Id, int Cluster, int X, int Y, int Advance);

/// <param name="Width">Font units.</param>
internal sealed record ShapedLine(IReadOnlyList<Glyph> Glyphs, int Width);

/// <summary>
/// Turns a line of text into glyphs. Always left to right and without ligatures, whatever the text says, so that the
/// same text has the same width on every machine and can be copied out of a PDF letter by letter.
/// </summary>
internal static class Shaper
{
    /// <summary>Advance of the box that stands for a missing character, in thousandths of the em.</summary>
    public const int MissingAdvance = 700;

    private static readonly Feature[] Features = [Feature.Parse("-liga"), Feature.Parse("-clig"), Feature.Parse("-dlig")];
    private static readonly Language English = new("en");

    public static ShapedLine Shape(string text, SheetFont font)
    {
        var file = FontFile.Of(font);
        using var buffer = new Buffer();
        buffer.AddUtf16(text);
        buffer.Direction = Direction.LeftToRight;
        buffer.Script = Script.Latin;
        buffer.Language = English;
        file.Shaping.Shape(buffer, Features);
        return Lay(buffer, MissingAdvance * file.UnitsPerEm / 1000);
    }

    private static ShapedLine Lay(Buffer buffer, int missing)
    {
        var infos = buffer.GetGlyphInfoSpan();
        var positions = buffer.GetGlyphPositionSpan();
        var glyphs = new Glyph[infos.Length];
        var pen = 0;
        for (var i = 0; i < glyphs.Length; i++)
        {
            var advance = infos[i].Codepoint == 0 ? missing : positions[i].XAdvance;
            glyphs[i] = new Glyph(
                (ushort)infos[i].Codepoint, (int)infos[i].Cluster, pen + positions[i].XOffset, positions[i].YOffset, advance);
            pen += advance;
        }

        return new ShapedLine(glyphs, pen);
    }
}
