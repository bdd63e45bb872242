using CapPrep.Drawing.Fonts;

namespace CapPrep.Drawing.Sheets;

/// <summary>A line that fits.</summary>
/// <param name="Size">Em size, 0.01 mm.</param>
/// <param name="Width">0.01 mm, rounded up.</param>
/// <param name="Cut">Something was left out; the text ends with an ellipsis.</param>
internal sealed record FittedLine(string Text, int Size, int Width, bool Cut);

/// <summary>
/// Makes text fit its room: first smaller, down to a floor, then cut between letters with an ellipsis. Widths come
/// from the face's own whole units, so they are the same on every machine.
/// </summary>
internal static class TextFit
{
    /// <summary>Longest text that is shaped at all; a sheet has no room for more.</summary>
    private const int MostCharacters = 2000;

    /// <summary>More than any line holds; keeps the cost of wrapping in step with the text.</summary>
    private const int LineCharacters = 300;
    private const string Ellipsis = "…";

    /// <summary>0.01 mm, rounded up.</summary>
    public static int Width(string text, SheetFont font, int size) => Scaled(Shaper.Shape(text, font).Width, font, size);

    /// <summary>One line of at most that width.</summary>
    /// <param name="size">Wanted em size, 0.01 mm.</param>
    /// <param name="floor">Smallest em size, 0.01 mm; at most <paramref name="size"/>.</param>
    public static FittedLine Line(string text, SheetFont font, int size, int floor, int width)
    {
        var clean = Bounded(SafeText.Clean(text).Trim());
        var units = Shaper.Shape(clean, font).Width;
        var fits = units == 0 ? size : (int)((long)width * FontFile.Of(font).UnitsPerEm / units);
        var chosen = Math.Clamp(fits, floor, size);
        return fits >= chosen
            ? new FittedLine(clean, chosen, Scaled(units, font, chosen), false)
            : CutToWidth(clean, font, chosen, width);
    }

    /// <summary>At most so many lines, broken at spaces; the last one is cut when there is more.</summary>
    public static IReadOnlyList<FittedLine> Wrap(string text, SheetFont font, int size, int width, int mostLines)
    {
        var lines = new List<FittedLine>();
        var rest = Bounded(SafeText.Clean(text).Trim());
        while (rest.Length > 0 && lines.Count < mostLines)
        {
            var end = lines.Count == mostLines - 1 ? rest.Length : BreakAfter(rest, font, size, width);
            lines.Add(Line(rest[..end], font, size, size, width));
            rest = rest[end..].TrimStart();
        }

        return lines;
    }

    private static int BreakAfter(string rest, SheetFont font, int size, int width)
    {
        var text = Shorter(rest, LineCharacters);
        var end = CharactersWithin(text, "", font, size, width);
        if (end == text.Length || (end > 0 && text[end] == ' '))
            return end;
        var space = end == 0 ? -1 : text.LastIndexOf(' ', end - 1);
        return space > 0 ? space : Math.Max(FirstLetter(text), end);
    }

    private static FittedLine CutToWidth(string text, SheetFont font, int size, int width)
    {
        var end = CharactersWithin(text, Ellipsis, font, size, width);
        var kept = text[..end].TrimEnd() + Ellipsis;
        return new FittedLine(kept, size, Width(kept, font, size), true);
    }

    /// <summary>
    /// How many characters fit with an end put behind them, counted in whole letters with their marks. What stands
    /// next to a letter changes its width, so the text is measured again as it would stand.
    /// </summary>
    private static int CharactersWithin(string text, string end, SheetFont font, int size, int width)
    {
        var shaped = Shaper.Shape(text, font);
        if (end.Length == 0 && Scaled(shaped.Width, font, size) <= width)
            return text.Length;
        var starts = shaped.Glyphs.Where(glyph => Scaled(glyph.X, font, size) <= width).Select(glyph => glyph.Cluster);
        return starts.Reverse().FirstOrDefault(start => Width(text[..start].TrimEnd() + end, font, size) <= width);
    }

    private static int FirstLetter(string text) => char.IsHighSurrogate(text[0]) && text.Length > 1 ? 2 : 1;

    private static string Bounded(string text) =>
        text.Length <= MostCharacters ? text : Shorter(text, MostCharacters) + Ellipsis;

    private static string Shorter(string text, int most) =>
        text.Length <= most ? text : text[..(char.IsHighSurrogate(text[most - 1]) ? most - 1 : most)];

    private static int Scaled(int units, SheetFont font, int size)
    {
        var em = FontFile.Of(font).UnitsPerEm;
        return (int)((((long)units * size) + em - 1) / em);
    }
}
