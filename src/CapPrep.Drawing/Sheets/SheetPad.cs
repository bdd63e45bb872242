namespace CapPrep.Drawing.Sheets;

internal enum Align
{
    Left,
    Center,
    Right,
}

/// <summary>How a text is set.</summary>
/// <param name="Size">Wanted em size, 0.01 mm.</param>
/// <param name="Floor">Smallest em size before the text is cut, 0.01 mm.</param>
internal sealed record Lettering(SheetFont Font, int Size, int Floor, Ink Ink)
{
    public int LineHeight => Size * 122 / 100;

    public static Lettering Plain(double points) => new(SheetFont.Regular, Points.Of(points), Points.Of(points), Ink.Black);

    public static Lettering Strong(double points) => new(SheetFont.Bold, Points.Of(points), Points.Of(points), Ink.Black);

    public Lettering DownTo(double points) => this with { Floor = Points.Of(points) };

    public Lettering In(Ink ink) => this with { Ink = ink };
}

/// <summary>Collects the marks of a sheet; every text goes through fitting here.</summary>
internal sealed class SheetPad
{
    private readonly List<Mark> _marks = [];

    public IReadOnlyList<Mark> Marks => _marks;

    public void Add(Mark mark) => _marks.Add(mark);

    public void Group(string title, SheetBox? clip, Action draw)
    {
        Add(new GroupStart(title, clip));
        draw();
        Add(new GroupEnd());
    }

    public void Line(SheetPoint from, SheetPoint to, Stroke stroke) => Add(new LinesMark([[from, to]], stroke));

    public void Box(SheetBox box, Stroke? stroke, Ink? fill = null) => Add(new BoxMark(box, stroke, fill));

    /// <summary>One line in the middle of a box's height; smaller or cut when it does not fit.</summary>
    /// <returns>The line as it stands.</returns>
    public FittedLine Text(string text, SheetBox box, Lettering set, Align align = Align.Left)
    {
        var line = TextFit.Line(text, set.Font, set.Size, set.Floor, box.Width);
        var baseline = box.Y + (box.Height / 2) + (line.Size * 35 / 100);
        Set(line, box, baseline, set, align);
        return line;
    }

    /// <summary>Lines from the top of a box, as many as it holds; the last is cut when there is more.</summary>
    /// <returns>The height used.</returns>
    public int Paragraph(string text, SheetBox box, Lettering set)
    {
        var lines = TextFit.Wrap(text, set.Font, set.Size, box.Width, Math.Max(1, box.Height / set.LineHeight));
        for (var i = 0; i < lines.Count; i++)
            Set(lines[i], box, box.Y + (i * set.LineHeight) + (set.Size * 95 / 100), set, Align.Left);
        return lines.Count * set.LineHeight;
    }

    private void Set(FittedLine line, SheetBox box, int baseline, Lettering set, Align align)
    {
        if (line.Text.Length == 0)
            return;
        var free = box.Width - line.Width;
        var x = box.X + (align == Align.Center ? free / 2 : align == Align.Right ? free : 0);
        Add(new TextMark(line.Text, set.Font, line.Size, new SheetPoint(x, baseline), box, set.Ink));
    }
}
