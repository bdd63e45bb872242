namespace CapPrep.Engine.Lettering.Letters;

/// <summary>How a group of limbs stands among the letters of a line.</summary>
/// <param name="Group">The limbs.</param>
/// <param name="Stands">Something of it stands on the base line.</param>
/// <param name="Descends">It reaches below the base line.</param>
/// <param name="Top">Where it ends above, dots and accents left out, sixteenths of a tape unit.</param>
/// <param name="IsSign">Too small for a letter: a hyphen, an apostrophe.</param>
internal sealed record Letter(Group Group, bool Stands, bool Descends, int Top, bool IsSign)
{
    // A sign is lower than this share of the letters; what stands on the line is at least that high, percent.
    private const int LetterFrom = 60;
    private const int StandFrom = 45;

    public static Letter Of(Group group, Levels levels)
    {
        var near = Tolerance.Base(levels.High);
        Standing[] standing = [.. group.Limbs.Where(limb => Math.Abs(limb.Reach.Bottom) <= near && limb.Reach.Height * 100L >= StandFrom * (long)levels.Low)];
        Standing[] main = standing.Length > 0 ? standing : [.. group.Limbs];
        var top = main.Max(limb => limb.Reach.Top);
        top = group.Limbs.Where(limb => limb.Reach.Bottom <= top - near).Aggregate(top, (most, limb) => Math.Max(most, limb.Reach.Top));
        var isLow = group.Reach.Height * 100L < LetterFrom * (long)levels.Low;
        return new(
            group,
            standing.Length > 0 || (!isLow && Math.Abs(group.Reach.Bottom) <= near),
            group.Reach.Bottom < -near,
            top,
            isLow);
    }
}
