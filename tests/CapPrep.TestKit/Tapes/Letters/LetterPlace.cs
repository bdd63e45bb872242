namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>A letter with its strokes at their size and place along the base line.</summary>
/// <param name="From">Left edge, from the middle of the line, tape units.</param>
/// <param name="To">Right edge.</param>
internal sealed record LetterPlace(char Letter, double From, double To, IReadOnlyList<PenStroke> Strokes)
{
    // Where the middle of a stroke may lie, hundredths of the x-height: descender, base line, x-height, capitals.
    private static readonly double[] Levels = [-40, 0, 100, 140];

    /// <summary>The letters of a line from left to right, the middle of the line at 0.</summary>
    public static IReadOnlyList<LetterPlace> Of(Lettering line)
    {
        var width = PenWidth(line);
        var at = -Width(line) / 2;
        var places = new List<LetterPlace>();
        foreach (var letter in line.Text)
        {
            if (LetterShapes.Find(letter) is not { } shape)
            {
                at += line.Space;
                continue;
            }

            var to = at + (shape.Width * Scale(line)) + width;
            places.Add(new(letter, at, to, [.. shape.Strokes.Select(stroke => AtSize(line, stroke, at + (width / 2)))]));
            at = to + line.Gap;
        }

        return places;
    }

    private static double Width(Lettering line) => line.Text.Sum(letter => LetterShapes.Find(letter) is { } shape
        ? (shape.Width * Scale(line)) + PenWidth(line) + line.Gap
        : line.Space) - line.Gap;

    private static double PenWidth(Lettering line) => line.Work == LetterWork.Running ? 0 : line.StrokeWidth;

    private static double Scale(Lettering line) => (line.XHeight - PenWidth(line)) / 100;

    private static PenStroke AtSize(Lettering line, LetterStroke stroke, double left)
    {
        var points = stroke.Points.Select(point =>
        {
            var up = Up(line, point.Y);
            return (left + (point.X * Scale(line)) + (up * line.SlantPercent / 100), up);
        });
        return new([.. points], stroke.IsRing, PenWidth(line));
    }

    /// <summary>Height of a stroke's middle so that its outer edge meets the level it belongs to.</summary>
    private static double Up(Lettering line, double level)
    {
        var half = PenWidth(line) / 2;
        double[] heights = [(-0.4 * line.XHeight) + half, half, line.XHeight - half, line.CapHeight - half];
        var k = level < Levels[1] ? 0 : level < Levels[2] ? 1 : 2;
        return heights[k] + ((level - Levels[k]) / (Levels[k + 1] - Levels[k]) * (heights[k + 1] - heights[k]));
    }
}
