using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Tells the tagline: the lowest line, small, wide, nearly straight and about the middle.</summary>
internal static class Tagline
{
    // House: letters up to 8 mm, or a third of the design; a line of four times their height; within 10 mm of the middle.
    private const double LetterHeightMm = 8;
    private const int Third = 3;
    private const int LeastLength = 4;
    private const int FromMiddle = 10 * Tenths.PerMillimeter;

    // House: an arc whose middle lies off its ends by less than 15 % of its width is as good as straight.
    private const double BowShare = 0.15;

    // House: nothing of the design lies lower than 3 mm, or one letter, under it.
    private const double UnderMm = 3;

    /// <param name="line">The lowest line.</param>
    /// <param name="design">Box of the whole design on the cap.</param>
    public static bool Is(TextLine line, Box design)
    {
        var height = line.LetterHeightMm;
        var under = (line.Box.Bottom - design.Bottom) / (double)Tenths.PerMillimeter;
        return (height <= LetterHeightMm || Third * height * Tenths.PerMillimeter <= design.Height)
            && line.Base.LengthMm >= LeastLength * height
            && Math.Abs(line.Base.RiseMm) * Tenths.PerMillimeter < BowShare * line.Box.Width
            && Math.Abs(line.Box.Center.X) <= FromMiddle
            && under <= Math.Max(UnderMm, height);
    }
}
