using System.Globalization;
using System.Xml;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>Writes the elements of one SVG document.</summary>
internal sealed class SvgMarks(XmlWriter xml)
{
    private const string Svg = "http://www.w3.org/2000/svg";

    private int _clips;

    public void Root(Sheet sheet)
    {
        xml.WriteStartElement("svg", Svg);
        Set("width", SvgNumber.Mm(sheet.Width) + "mm");
        Set("height", SvgNumber.Mm(sheet.Height) + "mm");
        Set("viewBox", $"0 0 {SvgNumber.Mm(sheet.Width)} {SvgNumber.Mm(sheet.Height)}");
        Set("role", "img");
        Set("aria-labelledby", "title desc");
        xml.WriteAttributeString("xml", "lang", null, SafeText.Clean(sheet.Language));
        Words("title", "title", sheet.Title);
        Words("desc", "desc", sheet.Description);
        SvgText.Definitions(xml, sheet);
        Element("rect", ("width", SvgNumber.Mm(sheet.Width)), ("height", SvgNumber.Mm(sheet.Height)), ("fill", "#FFFFFF"));
        xml.WriteStartElement("g", Svg);
        Set("fill", "none");
        Set("stroke-linecap", "round");
        Set("stroke-linejoin", "round");
        foreach (var mark in sheet.Marks)
            Mark(mark);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private void Mark(Mark mark)
    {
        switch (mark)
        {
            case LinesMark lines:
                Path(SvgNumber.Chains(lines.Lines, closed: false), lines.Stroke, null);
                break;
            case ShapeMark shape:
                Path(SvgNumber.Chains(shape.Rings, closed: true), null, shape.Fill);
                break;
            case PathMark path:
                Path(SvgNumber.Steps(path.Steps), path.Stroke, path.Fill);
                break;
            case BoxMark box:
                Box(box);
                break;
            case CircleMark circle:
                Circle(circle);
                break;
            case TextMark text:
                SvgText.Line(xml, text);
                break;
            case CodeMark code:
                Code(code);
                break;
            case GroupStart group:
                Group(group);
                break;
            case GroupEnd:
                xml.WriteEndElement();
                break;
            default:
                throw new ArgumentException($"Nothing draws {mark.GetType().Name}.", nameof(mark));
        }
    }

    private void Path(string data, Stroke? stroke, Ink? fill)
    {
        xml.WriteStartElement("path", Svg);
        Set("d", data);
        Paint(stroke, fill);
        xml.WriteEndElement();
    }

    private void Box(BoxMark mark)
    {
        xml.WriteStartElement("rect", Svg);
        Set("x", SvgNumber.Mm(mark.Box.X));
        Set("y", SvgNumber.Mm(mark.Box.Y));
        Set("width", SvgNumber.Mm(mark.Box.Width));
        Set("height", SvgNumber.Mm(mark.Box.Height));
        Paint(mark.Stroke, mark.Fill);
        xml.WriteEndElement();
    }

    private void Circle(CircleMark mark)
    {
        xml.WriteStartElement("circle", Svg);
        Set("cx", SvgNumber.Mm(mark.Center.X));
        Set("cy", SvgNumber.Mm(mark.Center.Y));
        Set("r", SvgNumber.Mm(mark.Radius));
        Paint(mark.Stroke, mark.Fill);
        xml.WriteEndElement();
    }

    private void Code(CodeMark code)
    {
        xml.WriteStartElement("path", Svg);
        Set("role", "img");
        Set("aria-label", SafeText.Clean(code.Text));
        Set("shape-rendering", "crispEdges");
        Set("d", SvgNumber.Chains(CodeOutline.Rings(code), closed: true));
        Paint(null, code.Ink);
        xml.WriteEndElement();
    }

    private void Group(GroupStart group)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"clip{_clips}");
        if (group.Clip is { } clip)
        {
            _clips++;
            xml.WriteStartElement("clipPath", Svg);
            Set("id", id);
            Box(new BoxMark(clip, null, null));
            xml.WriteEndElement();
        }

        xml.WriteStartElement("g", Svg);
        if (group.Clip is not null)
            Set("clip-path", $"url(#{id})");
        Words("title", null, group.Title);
    }

    private void Paint(Stroke? stroke, Ink? fill)
    {
        if (fill is { } ink)
        {
            Set("fill", ink.ToString());
            Set("fill-rule", "evenodd");
        }

        if (stroke is not { } line)
            return;
        Set("stroke", line.Ink.ToString());
        Set("stroke-width", SvgNumber.Mm(line.Width));
        if (line.Dash != Dash.Solid)
            Set("stroke-dasharray", line.Dash == Dash.Short ? ".6 .6" : "2 1");
    }

    private void Words(string element, string? id, string text)
    {
        xml.WriteStartElement(element, Svg);
        if (id is not null)
            Set("id", id);
        xml.WriteString(SafeText.Clean(text));
        xml.WriteEndElement();
    }

    private void Element(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        xml.WriteStartElement(name, Svg);
        foreach (var (attribute, value) in attributes)
            Set(attribute, value);
        xml.WriteEndElement();
    }

    private void Set(string name, string value) => xml.WriteAttributeString(name, value);
}
