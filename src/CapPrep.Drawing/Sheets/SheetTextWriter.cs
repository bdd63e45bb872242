using System.Globalization;
using System.Text;

namespace CapPrep.Drawing.Sheets;

/// <summary>Writes a sheet line by line. Points of lines and rings stand as differences to the point before.</summary>
internal sealed class SheetTextWriter
{
    private readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    public void Head(Sheet sheet)
    {
        _text.Append(SheetFile.Magic).Append('\n');
        Line("page", sheet.Width, sheet.Height);
        Word("title").Quoted(sheet.Title).End();
        Word("description").Quoted(sheet.Description).End();
        Word("language").Quoted(sheet.Language).End();
        Word("created").Token(sheet.Created.ToString(SheetFile.DateForm, CultureInfo.InvariantCulture)).End();
    }

    public void Mark(Mark mark)
    {
        switch (mark)
        {
            case LinesMark lines:
                Word("lines").Stroke(lines.Stroke).Chains(lines.Lines).End();
                break;
            case ShapeMark shape:
                Word("shape").Fill(shape.Fill).Chains(shape.Rings).End();
                break;
            case PathMark path:
                Word("path").Stroke(path.Stroke).Fill(path.Fill).Steps(path.Steps).End();
                break;
            case BoxMark box:
                Word("box").Box(box.Box).Stroke(box.Stroke).Fill(box.Fill).End();
                break;
            case CircleMark circle:
                Word("circle").Point(circle.Center).Number(circle.Radius).Stroke(circle.Stroke).Fill(circle.Fill).End();
                break;
            case TextMark text:
                Word("text").Token(text.Font.ToString()).Number(text.Size).Point(text.At).Box(text.Box)
                    .Fill(text.Ink).Quoted(text.Text).End();
                break;
            case CodeMark code:
                Word("code").Box(code.Box).Fill(code.Ink).Quoted(code.Text).Rows(code.Rows).End();
                break;
            case GroupStart group:
                Word("group").Quoted(group.Title).Clip(group.Clip).End();
                break;
            case GroupEnd:
                Word("end").End();
                break;
            default:
                throw new ArgumentException($"No stored form for {mark.GetType().Name}.", nameof(mark));
        }
    }

    private void Line(string word, int first, int second) => Word(word).Number(first).Number(second).End();

    private SheetTextWriter Word(string word)
    {
        _text.Append(word);
        return this;
    }

    private SheetTextWriter Token(string token)
    {
        _text.Append(' ').Append(token);
        return this;
    }

    private SheetTextWriter Number(int number)
    {
        _text.Append(' ').Append(CultureInfo.InvariantCulture, $"{number}");
        return this;
    }

    private SheetTextWriter Point(SheetPoint point) => Number(point.X).Number(point.Y);

    private SheetTextWriter Box(SheetBox box) => Number(box.X).Number(box.Y).Number(box.Width).Number(box.Height);

    private SheetTextWriter Clip(SheetBox? box) => box is { } clip ? Box(clip) : Token("-");

    private SheetTextWriter Fill(Ink? ink) => Token(ink?.ToString() ?? "-");

    private SheetTextWriter Stroke(Stroke? stroke) => stroke is { } some
        ? Number(some.Width).Token(some.Ink.ToString()).Token(some.Dash.ToString())
        : Token("-");

    private SheetTextWriter Chains(IReadOnlyList<IReadOnlyList<SheetPoint>> chains)
    {
        foreach (var chain in chains)
        {
            _text.Append(" |");
            var before = default(SheetPoint);
            foreach (var point in chain)
            {
                Number(point.X - before.X).Number(point.Y - before.Y);
                before = point;
            }
        }

        return this;
    }

    private SheetTextWriter Steps(IReadOnlyList<PathStep> steps)
    {
        foreach (var step in steps)
        {
            Token(step.Verb.ToString());
            if (step.Verb != PathVerb.Close)
                Point(step.First);
            if (step.Verb == PathVerb.Curve)
                Point(step.Second).Point(step.Third);
        }

        return this;
    }

    private SheetTextWriter Rows(IReadOnlyList<string> rows)
    {
        foreach (var row in rows)
            Token(row);
        return this;
    }

    private SheetTextWriter Quoted(string text)
    {
        _text.Append(" \"");
        foreach (var sign in text)
        {
            if (sign is '"' or '\\')
                _text.Append('\\').Append(sign);
            else if (sign is >= ' ' and <= '~')
                _text.Append(sign);
            else
                _text.Append(CultureInfo.InvariantCulture, $"\\u{(int)sign:X4}");
        }

        _text.Append('"');
        return this;
    }

    private void End() => _text.Append('\n');
}
