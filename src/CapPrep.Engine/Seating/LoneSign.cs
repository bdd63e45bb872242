using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Seating;

/// <summary>
/// A small sign that stands alone at one end of a design, as a registered mark behind a word: people center what it
/// belongs to, not the sign (common practice, no source).
/// </summary>
internal static class LoneSign
{
    // House: smaller than 4 mm, at least 1.5 mm from everything else, beside a design of three times its width.
    private const int Small = 40;
    private const int Alone = 15;
    private const int TimesWider = 3;

    // House: a sign is sewn in so many strands at most.
    private const int MostStrands = 4;

    /// <summary>The box of a design without its sign; the whole box where it has none, or one at either end.</summary>
    internal static Box WithoutIt(StitchSequence stitches)
    {
        var strands = Strands(stitches);
        var whole = strands.Aggregate((all, next) => all.Union(next));
        Box? right = Rest([.. strands.OrderByDescending(strand => strand.Left)], whole, (rest, sign) => sign.Left - rest.Right);
        Box? left = Rest([.. strands.OrderBy(strand => strand.Right)], whole, (rest, sign) => rest.Left - sign.Right);
        return right is not null && left is not null ? whole : right ?? left ?? whole;
    }

    /// <summary>What is left when the first few strands are taken for a sign; null when they are none.</summary>
    private static Box? Rest(Box[] strands, Box whole, Func<Box, Box, int> gap)
    {
        for (var count = 1; count <= MostStrands && count < strands.Length; count++)
        {
            var sign = strands[..count].Aggregate((all, next) => all.Union(next));
            var rest = strands[count..].Aggregate((all, next) => all.Union(next));
            if (IsSmall(sign) && gap(rest, sign) >= Alone && rest.Width >= TimesWider * sign.Width && !strands[count..].Any(strand => IsLetterBeside(strand, sign)))
                return rest with { Bottom = whole.Bottom, Top = whole.Top };
        }

        return null;
    }

    private static bool IsSmall(Box box) => box.Width < Small && box.Height < Small;

    /// <summary>Then it is one of a line of small letters.</summary>
    private static bool IsLetterBeside(Box strand, Box sign) =>
        IsSmall(strand) && strand.Bottom <= sign.Top && sign.Bottom <= strand.Top
        && strand.Left <= sign.Right + Small && sign.Left <= strand.Right + Small;

    private static List<Box> Strands(StitchSequence stitches)
    {
        var strands = new List<Box>();
        for (var at = 0; at < stitches.Count; at++)
        {
            var box = Box.Of(stitches.At(at));
            if (at == 0 || stitches.Relations[at] != Relation.Thread)
                strands.Add(box);
            else
                strands[^1] = strands[^1].Union(box);
        }

        return strands;
    }
}
