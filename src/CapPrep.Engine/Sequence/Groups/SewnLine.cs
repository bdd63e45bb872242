using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>A line of letters as the sew order sees it: a text line, the row it is a part of, or a row alone.</summary>
/// <param name="Line">The text line; null: its letters were not told apart.</param>
/// <param name="Row">The row of letters around it; null: none was found.</param>
/// <param name="Own">Elements that hold letters of it and nothing else.</param>
internal sealed record SewnLine(TextLine? Line, LetterRow? Row, IReadOnlySet<int> Own)
{
    // House, as for text lines: letters up to 8 mm or a third of the design, four times as wide, about the middle, and
    // nothing of the design lower than 3 mm or a letter under it.
    private const int SmallLetter = 8 * Tenths.PerMillimeter;
    private const int Third = 3;
    private const int LeastLength = 4;
    private const int FromMiddle = 10 * Tenths.PerMillimeter;
    private const int Under = 3 * Tenths.PerMillimeter;

    public int Thread => Line?.Thread ?? Row!.Thread;

    public bool IsConnected => Line?.IsConnected == true;

    /// <summary>On the cap, tape units.</summary>
    public Box Box => Line is null ? Row!.Box : Row is null ? Line.Box : Line.Box.Union(Row.Box);

    public double LetterHeightMm => Line?.LetterHeightMm ?? Row!.Height / (double)Tenths.PerMillimeter;

    public double LengthMm => Math.Max(Line?.Base.LengthMm ?? 0, Row is null ? 0 : Box.Width / (double)Tenths.PerMillimeter);

    /// <summary>Letters of the row that the text line lacks.</summary>
    public IEnumerable<RowLetter> Beside =>
        Row is null ? [] : Line is null ? Row.Letters : Row.Letters.Where(letter => !letter.Elements.Any(IsInLine));

    /// <summary>The lowest small wide line of the design, by its row.</summary>
    /// <param name="design">Box of the whole design on the cap.</param>
    public bool IsTaglineByRow(Box design) =>
        Row is not null && !IsConnected
        && (Row.Height <= SmallLetter || Third * Row.Height <= design.Height)
        && Row.Box.Width >= LeastLength * Row.Height
        && Math.Abs(Row.Box.Center.X) <= FromMiddle
        && Row.Box.Bottom - design.Bottom <= Math.Max(Under, Row.Height);

    private bool IsInLine(int element) => Line!.Glyphs.Any(glyph => glyph.Elements.Contains(element));
}
