using System.Globalization;
using System.Xml;
using CapPrep.Drawing.Fonts;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>Text in an SVG document: every glyph outline once, then used by reference.</summary>
internal static class SvgText
{
    private const string Svg = "http://www.w3.org/2000/svg";

    /// <summary>The outlines that the sheet's texts use.</summary>
    public static void Definitions(XmlWriter xml, Sheet sheet)
    {
        var used = sheet.Marks.OfType<TextMark>()
            .SelectMany(mark => Shape(mark).Glyphs.Select(glyph => (mark.Font, glyph.Id)))
            .Distinct()
            .OrderBy(glyph => glyph.Font)
            .ThenBy(glyph => glyph.Id)
            .Where(glyph => glyph.Id != 0 && GlyphOutline.Data(glyph.Font, glyph.Id).Length > 0);
        xml.WriteStartElement("defs", Svg);
        foreach (var (font, id) in used)
        {
            xml.WriteStartElement("path", Svg);
            xml.WriteAttributeString("id", Name(font, id));
            xml.WriteAttributeString("d", GlyphOutline.Data(font, id));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    public static void Line(XmlWriter xml, TextMark mark)
    {
        var line = Shape(mark);
        xml.WriteStartElement("g", Svg);
        xml.WriteAttributeString("role", "img");
        xml.WriteAttributeString("aria-label", SafeText.Clean(mark.Text));
        xml.WriteAttributeString("fill", mark.Ink.ToString());
        Known(xml, mark, line);
        foreach (var glyph in line.Glyphs.Where(glyph => glyph.Id == 0))
            Missing(xml, mark, glyph);
        xml.WriteEndElement();
    }

    private static void Known(XmlWriter xml, TextMark mark, ShapedLine line)
    {
        xml.WriteStartElement("g", Svg);
        xml.WriteAttributeString("transform", string.Create(
            CultureInfo.InvariantCulture,
            $"translate({SvgNumber.Mm(mark.At.X)} {SvgNumber.Mm(mark.At.Y)}) scale({Scale(mark)})"));
        foreach (var glyph in line.Glyphs.Where(glyph => GlyphOutline.Data(mark.Font, glyph.Id).Length > 0 && glyph.Id != 0))
            Use(xml, mark.Font, glyph);
        xml.WriteEndElement();
    }

    private static void Use(XmlWriter xml, SheetFont font, Glyph glyph)
    {
        xml.WriteStartElement("use", Svg);
        xml.WriteAttributeString("href", "#" + Name(font, glyph.Id));
        if (glyph.X != 0)
            xml.WriteAttributeString("x", glyph.X.ToString(CultureInfo.InvariantCulture));
        if (glyph.Y != 0)
            xml.WriteAttributeString("y", (-glyph.Y).ToString(CultureInfo.InvariantCulture));
        xml.WriteEndElement();
    }

    private static void Missing(XmlWriter xml, TextMark mark, Glyph glyph)
    {
        var rings = MissingGlyph.Rings(mark, glyph, FontFile.Of(mark.Font).UnitsPerEm);
        xml.WriteStartElement("path", Svg);
        xml.WriteAttributeString("d", SvgNumber.Chains(rings, closed: true));
        xml.WriteAttributeString("fill-rule", "evenodd");
        xml.WriteEndElement();
    }

    private static ShapedLine Shape(TextMark mark) => Shaper.Shape(SafeText.Clean(mark.Text), mark.Font);

    /// <summary>Millimeters per font unit, exact: an em is a whole number of 0.01 mm.</summary>
    private static string Scale(TextMark mark) =>
        (mark.Size / 100m / FontFile.Of(mark.Font).UnitsPerEm).ToString("0.########", CultureInfo.InvariantCulture);

    private static string Name(SheetFont font, ushort id) =>
        string.Create(CultureInfo.InvariantCulture, $"{(font == SheetFont.Bold ? 'b' : 'r')}{id}");
}
