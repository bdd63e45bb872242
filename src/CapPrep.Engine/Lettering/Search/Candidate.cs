using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>A line of letters that may be one.</summary>
/// <param name="Curve">Its base line.</param>
/// <param name="Levels">The heights of its letters.</param>
/// <param name="Lean">How far letters go along for every 1,000 they go up.</param>
/// <param name="Letters">From left to right.</param>
internal sealed record Candidate(Curve Curve, Levels Levels, int Lean, IReadOnlyList<Letter> Letters)
{
    private const int MoreLetters = 120;
    private const int LessResidual = 70;

    // Sine of 20 degrees.
    private const double Steep = 0.342;

    public IEnumerable<Standing> Limbs => Letters.SelectMany(letter => letter.Group.Limbs);

    /// <summary>Letters that stand on the line.</summary>
    public int Stand => Letters.Count(letter => letter.Stands);

    /// <summary>Letters that reach one of its heights.</summary>
    public int OnLevel => Letters.Count(letter => Levels.Has(letter.Top));

    /// <summary>Letters that stand, and those that reach a height.</summary>
    public int Score => Stand + OnLevel;

    /// <summary>An arc is better than a straight line when a fifth more letters stand on it, or its letters stand a third nearer.</summary>
    public bool IsBetterThan(Candidate straight) =>
        100L * Stand >= MoreLetters * (long)straight.Stand
        || (Stand >= straight.Stand && 100L * Residual <= LessResidual * (long)straight.Residual);

    public bool Shares(Candidate other)
    {
        var limbs = other.Limbs.Select(limb => limb.Limb.Index).ToHashSet();
        return Limbs.Any(limb => limbs.Contains(limb.Limb.Index));
    }

    /// <summary>How far the feet of its letters lie from the line, the middle one of them, sixteenths of a tape unit.</summary>
    public int Residual
    {
        get
        {
            int[] feet = [.. Limbs.Select(limb => Math.Abs(limb.Reach.Bottom)).Where(foot => foot <= Tolerance.Base(Levels.High)).Order()];
            return feet.Length == 0 ? int.MaxValue : feet[feet.Length / 2];
        }
    }

    /// <summary>A straight line of more than 20 degrees.</summary>
    public bool IsSteep => Curve is StraightCurve line && Math.Abs(line.AcrossY) > Steep;

    /// <summary>From its first letter to its last, sixteenths of a tape unit.</summary>
    public int Length => Letters[^1].Group.Reach.To - Letters[0].Group.Reach.From;
}
