namespace CapPrep.Drawing.Sheets;

/// <summary>One thing drawn on a sheet, or the beginning or end of a group. Lengths in 0.01 mm.</summary>
public abstract record Mark;

public enum Dash
{
    Solid,

    /// <summary>0.6 mm drawn, 0.6 mm open.</summary>
    Short,

    /// <summary>2 mm drawn, 1 mm open.</summary>
    Long,
}

/// <summary>How a line is drawn; round caps and joins.</summary>
/// <param name="Width">0.01 mm, at least 1.</param>
public readonly record struct Stroke(int Width, Ink Ink, Dash Dash = Dash.Solid);

/// <summary>Open lines of one stroke.</summary>
public sealed record LinesMark(IReadOnlyList<IReadOnlyList<SheetPoint>> Lines, Stroke Stroke) : Mark;

/// <summary>Closed rings filled by the even-odd rule.</summary>
public sealed record ShapeMark(IReadOnlyList<IReadOnlyList<SheetPoint>> Rings, Ink Fill) : Mark;

/// <summary>A path with straight and curved steps.</summary>
public sealed record PathMark(IReadOnlyList<PathStep> Steps, Stroke? Stroke, Ink? Fill) : Mark;

public sealed record BoxMark(SheetBox Box, Stroke? Stroke, Ink? Fill) : Mark;

public sealed record CircleMark(SheetPoint Center, int Radius, Stroke? Stroke, Ink? Fill) : Mark;

/// <summary>One line of text.</summary>
/// <param name="Text">As it is drawn, already fitted.</param>
/// <param name="At">Left end of the base line.</param>
/// <param name="Size">Em size.</param>
/// <param name="Box">The box it was fitted to; nothing of it is drawn outside sideways.</param>
public sealed record TextMark(string Text, SheetFont Font, int Size, SheetPoint At, SheetBox Box, Ink Ink) : Mark;

/// <summary>A code of square modules, dark ones drawn as one area.</summary>
/// <param name="Text">What it says when read.</param>
/// <param name="Rows">One string per row, <c>1</c> dark and <c>0</c> light; the quiet zone is not part of it.</param>
/// <param name="Box">A square, without the quiet zone.</param>
public sealed record CodeMark(string Text, IReadOnlyList<string> Rows, SheetBox Box, Ink Ink) : Mark;

/// <summary>The marks up to the matching <see cref="GroupEnd"/> belong together.</summary>
/// <param name="Title">What they are, for readers who cannot see them.</param>
/// <param name="Clip">Nothing of them is drawn outside; null: no limit.</param>
public sealed record GroupStart(string Title, SheetBox? Clip) : Mark;

public sealed record GroupEnd : Mark;

public enum PathVerb
{
    Move,
    Line,

    /// <summary>A cubic curve with two control points.</summary>
    Curve,
    Close,
}

/// <summary>One step of a path; a curve uses all three points, the last one is where it ends.</summary>
public readonly record struct PathStep(PathVerb Verb, SheetPoint First, SheetPoint Second, SheetPoint Third)
{
    public static PathStep Move(SheetPoint to) => new(PathVerb.Move, to, default, default);

    public static PathStep Line(SheetPoint to) => new(PathVerb.Line, to, default, default);

    public static PathStep Curve(SheetPoint first, SheetPoint second, SheetPoint to) =>
        new(PathVerb.Curve, first, second, to);

    public static PathStep Close() => new(PathVerb.Close, default, default, default);
}
