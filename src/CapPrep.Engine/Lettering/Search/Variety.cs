using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Tells letters from combs of bars, dashes and one shape repeated.</summary>
internal static class Variety
{
    // Shapes are alike when all their limbs lie alike but for this share of the height, percent.
    private const int Alike = 14;

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

    /// <summary>About as wide, and every limb of the one has its like in the other.</summary>
    private static bool AreAlike(Letter one, Letter other, Levels levels)
    {
        var near = (int)(Alike * (long)levels.Low / 100);
        return Math.Abs(one.Group.Reach.Width - other.Group.Reach.Width) < near
            && HasLikes(one.Group, other.Group, near) && HasLikes(other.Group, one.Group, near);
    }

    private static bool HasLikes(Group one, Group other, int near) => one.Limbs.All(limb =>
        other.Limbs.Any(like => IsLike(limb.Reach, one.Reach.From, like.Reach, other.Reach.From, near)));

    private static bool IsLike(in Reach limb, int from, in Reach like, int likeFrom, int near) =>
        Math.Abs(limb.From - from - like.From + likeFrom) < near && Math.Abs(limb.To - from - like.To + likeFrom) < near
        && Math.Abs(limb.Bottom - like.Bottom) < near && Math.Abs(limb.Top - like.Top) < near;
}
