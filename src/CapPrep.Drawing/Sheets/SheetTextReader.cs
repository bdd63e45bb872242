using System.Globalization;
using System.Text;

namespace CapPrep.Drawing.Sheets;

/// <summary>Reads what <see cref="SheetTextWriter"/> wrote; anything else is a <see cref="FormatException"/>.</summary>
internal sealed class SheetTextReader(string text)
{
    private int _at;

    public Sheet Sheet()
    {
        if (!text.StartsWith(SheetFile.Magic + "\n", StringComparison.Ordinal))
            throw Broken("not a sheet");
        _at = SheetFile.Magic.Length + 1;
        return Head() with { Marks = Marks() };
    }

    private Sheet Head()
    {
        Expect("page");
        var (width, height) = (Number(), Number());
        EndLine();
        var title = Named("title");
        var description = Named("description");
        var language = Named("language");
        Expect("created");
        var created = Date();
        EndLine();
        return new Sheet
        {
            Width = width,
            Height = height,
            Title = title,
            Description = description,
            Language = language,
            Created = created,
            Marks = [],
        };
    }

    private List<Mark> Marks()
    {
        var marks = new List<Mark>();
        while (_at < text.Length)
        {
            marks.Add(Mark(Token().ToString()));
            EndLine();
        }

        return marks;
    }

    private Mark Mark(string word) => word switch
    {
        "lines" => Lines(),
        "shape" => Shape(),
        "path" => Path(),
        "box" => new BoxMark(Box(), Stroke(), Fill()),
        "circle" => new CircleMark(Point(), Number(), Stroke(), Fill()),
        "text" => Text(),
        "code" => Code(),
        "group" => new GroupStart(Quoted(), Clip()),
        "end" => new GroupEnd(),
        _ => throw Broken("a mark"),
    };

    private LinesMark Lines()
    {
        var stroke = Stroke() ?? throw Broken("a stroke");
        return new LinesMark(Chains(), stroke);
    }

    private ShapeMark Shape()
    {
        var fill = SomeInk();
        return new ShapeMark(Chains(), fill);
    }

    private PathMark Path()
    {
        var (stroke, fill) = (Stroke(), Fill());
        var steps = new List<PathStep>();
        while (!AtEndOfLine)
            steps.Add(Step(Member<PathVerb>()));
        return new PathMark(steps, stroke, fill);
    }

    private PathStep Step(PathVerb verb) => verb switch
    {
        PathVerb.Close => PathStep.Close(),
        PathVerb.Curve => PathStep.Curve(Point(), Point(), Point()),
        _ => new PathStep(verb, Point(), default, default),
    };

    private TextMark Text()
    {
        var font = Member<SheetFont>();
        var size = Number();
        var (at, box, ink) = (Point(), Box(), SomeInk());
        return new TextMark(Quoted(), font, size, at, box, ink);
    }

    private CodeMark Code()
    {
        var (box, ink, says) = (Box(), SomeInk(), Quoted());
        var rows = new List<string>();
        while (!AtEndOfLine)
            rows.Add(Token().ToString());
        return new CodeMark(says, rows, box, ink);
    }

    private List<IReadOnlyList<SheetPoint>> Chains()
    {
        var chains = new List<IReadOnlyList<SheetPoint>>();
        while (!AtEndOfLine)
        {
            Expect("|");
            chains.Add(Chain());
        }

        return chains;
    }

    private List<SheetPoint> Chain()
    {
        var chain = new List<SheetPoint>();
        var point = default(SheetPoint);
        while (!AtEndOfLine && text[_at + 1] != '|')
        {
            point = point.Move(Number(), Number());
            chain.Add(point);
        }

        return chain;
    }

    private SheetPoint Point() => new(Number(), Number());

    private SheetBox Box() => new(Number(), Number(), Number(), Number());

    private SheetBox? Clip() => NextIsAbsent() ? null : Box();

    private Stroke? Stroke() => NextIsAbsent() ? null : new Stroke(Number(), SomeInk(), Member<Dash>());

    private Ink? Fill() => NextIsAbsent() ? null : SomeInk();

    private Ink SomeInk() => Ink.TryParse(Token().ToString(), out var ink) ? ink : throw Broken("an ink");

    private int Number() => int.TryParse(Token(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
        ? number
        : throw Broken("a number");

    private T Member<T>()
        where T : struct, Enum =>
        Enum.TryParse<T>(Token(), out var member) ? member : throw Broken(typeof(T).Name);

    private DateTimeOffset Date() => DateTimeOffset.TryParseExact(
        Token(), SheetFile.DateForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var date)
        ? date
        : throw Broken("a date");

    private string Named(string name)
    {
        Expect(name);
        var value = Quoted();
        EndLine();
        return value;
    }

    private string Quoted()
    {
        if (AtEndOfLine || text[++_at] != '"')
            throw Broken("a quoted text");
        var read = new StringBuilder();
        while (Sign() is { } sign)
            read.Append(sign);
        return read.ToString();
    }

    /// <summary>The next sign of a quoted text; null behind the closing quote.</summary>
    private char? Sign()
    {
        _at++;
        if (_at + 1 >= text.Length)
            throw Broken("a closing quote");
        if (text[_at] == '"')
        {
            _at++;
            return null;
        }

        if (text[_at] != '\\')
            return text[_at];
        return text[++_at] == 'u' ? Escaped() : text[_at];
    }

    private char Escaped()
    {
        if (_at + 4 >= text.Length || !ushort.TryParse(
            text.AsSpan(_at + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code))
            throw Broken("four hex digits");
        _at += 4;
        return (char)code;
    }

    private bool NextIsAbsent()
    {
        if (AtEndOfLine || _at + 1 >= text.Length || text[_at + 1] != '-' || (_at + 2 < text.Length && text[_at + 2] is not (' ' or '\n')))
            return false;
        _at += 2;
        return true;
    }

    private bool AtEndOfLine => _at + 1 >= text.Length || text[_at] == '\n';

    private void Expect(string word)
    {
        if (!Token().SequenceEqual(word))
            throw Broken(word);
    }

    /// <summary>The next word; the reader stands on the space before it, or on its first letter in a new line.</summary>
    private ReadOnlySpan<char> Token()
    {
        if (_at < text.Length && text[_at] == ' ')
            _at++;
        var start = _at;
        while (_at < text.Length && text[_at] is not (' ' or '\n'))
            _at++;
        return text.AsSpan(start, _at - start);
    }

    private void EndLine()
    {
        if (_at >= text.Length || text[_at] != '\n')
            throw Broken("the end of the line");
        _at++;
    }

    private FormatException Broken(string wanted) =>
        new(string.Create(CultureInfo.InvariantCulture, $"Broken sheet at character {_at}: {wanted} expected."));
}
