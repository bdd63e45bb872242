using CapPrep.Engine.Lettering.Letters;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Tells letters from combs of bars, dashes and one shape repeated.</summary>
internal static class Variety
{
    // Shapes are alike when their widths differ by less than this share of the height, percent.
    private const int AlikeWidth = 12;

    // One shape may stand for at most so many letters, and bars for this share of them, percent.
    private const int LettersPerShape = 3;
    private const int BarShare = 75;

    public static bool IsLettering(IReadOnlyList<Letter> letters, Levels levels)
    {
        var shapes = new List<Letter>();
        foreach (var letter in letters)
        {
            if (!shapes.Any(shape => AreAlike(shape, letter, levels)))
                shapes.Add(letter);
        }

        var bars = letters.Count(IsBar);
        return shapes.Count >= 2
            && shapes.Count * LettersPerShape >= letters.Count
            && shapes.Any(shape => !IsBar(shape))
            && 100L * bars <= BarShare * (long)letters.Count;
    }

    private static bool IsBar(Letter letter) => letter.Group.Limbs.Count == 1;

    private static bool AreAlike(Letter one, Letter other, Levels levels) =>
        100L * Math.Abs(one.Group.Reach.Width - other.Group.Reach.Width) < AlikeWidth * (long)levels.Low
        && Math.Abs(one.Top - other.Top) <= 2 * Tolerance.Top(levels.High)
        && one.Descends == other.Descends
        && Math.Abs(one.Group.Limbs.Count - other.Group.Limbs.Count) <= (IsBar(one) || IsBar(other) ? 0 : 1);
}
