using CapPrep.Drawing.Sheets;
using CsCheck;

namespace CapPrep.Drawing.Tests.Builders;

internal static class SomeSheet
{
    public static Sheet With(params Mark[] marks) => new()
    {
        Width = 21000,
        Height = 29700,
        Title = "A sheet",
        Description = "Something to look at.",
        Language = "en",
        Created = Some.Time,
        Marks = marks,
    };

    public static TextMark Text(string text, int size = 600, int y = 3000) =>
        new(text, SheetFont.Regular, size, new SheetPoint(1000, y), new SheetBox(1000, y - size, 19000, size * 2), Ink.Black);

    public static readonly Gen<SheetPoint> Points =
        Gen.Int[-3_000_000, 3_000_000].Select(Gen.Int[-3_000_000, 3_000_000], (x, y) => new SheetPoint(x, y));

    public static readonly Gen<string> Texts = Gen.OneOf(Gen.String, Gen.String[Gen.Char['\u0000', '\uFFFF'], 0, 20]);

    /// <summary>Sheets with every kind of mark and any text.</summary>
    public static readonly Gen<Sheet> Any =
        Marks().List[0, 12].Select(Texts, Texts, Gen.Long[0, 4_000_000_000_000], (marks, title, description, time) => new Sheet
        {
            Width = 21000,
            Height = 29700,
            Title = title,
            Description = description,
            Language = "en",
            Created = DateTimeOffset.FromUnixTimeMilliseconds(time),
            Marks = marks,
        });

    private static Gen<Mark> Marks()
    {
        var inks = Gen.Byte.Select(Gen.Byte, Gen.Byte, (red, green, blue) => new Ink(red, green, blue));
        var strokes = Gen.Int[1, 500].Select(inks, Gen.Enum<Dash>(), (width, ink, dash) => new Stroke(width, ink, dash));
        var boxes = Points.Select(Gen.Int[0, 99999], Gen.Int[0, 99999], (at, width, height) => new SheetBox(at.X, at.Y, width, height));
        var chains = Points.List[0, 6].Select(points => (IReadOnlyList<SheetPoint>)points).List[0, 4]
            .Select(list => (IReadOnlyList<IReadOnlyList<SheetPoint>>)list);
        var steps = Gen.OneOf(
            Points.Select(PathStep.Move),
            Points.Select(PathStep.Line),
            Points.Select(Points, Points, PathStep.Curve),
            Gen.Const(PathStep.Close()));
        var someStroke = strokes.Nullable();
        var someInk = inks.Nullable();
        return Gen.OneOf<Mark>(
            chains.Select(strokes, (lines, stroke) => (Mark)new LinesMark(lines, stroke)),
            chains.Select(inks, (rings, ink) => (Mark)new ShapeMark(rings, ink)),
            steps.List[0, 6].Select(someStroke, someInk, (path, stroke, ink) => (Mark)new PathMark(path, stroke, ink)),
            boxes.Select(someStroke, someInk, (box, stroke, ink) => (Mark)new BoxMark(box, stroke, ink)),
            Points.Select(Gen.Int[0, 9999], someStroke, someInk, (at, radius, stroke, ink) => (Mark)new CircleMark(at, radius, stroke, ink)),
            Texts.Select(Gen.Enum<SheetFont>(), Points, boxes, inks, (text, font, at, box, ink) => (Mark)new TextMark(text, font, 353, at, box, ink)),
            Texts.Select(boxes, inks, (text, box, ink) => (Mark)new CodeMark(text, new List<string> { "101", "010", "111" }, box, ink)),
            Texts.Select(boxes.Nullable(), (title, clip) => (Mark)new GroupStart(title, clip)),
            Gen.Const((Mark)new GroupEnd()));
    }
}
