using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>Makes one limb of a stem that was sewn in two parts, with a bar in between.</summary>
internal static class LimbJoiner
{
    // How near their ends come: 0.8 mm, or one width.
    private const int Near = 8 * Fine.PerTenth;

    // Widths from 0.6 to 1.6 of each other, percent.
    private const int Narrowest = 60;

    // They lean at most 20 degrees from each other, as the square of the cosine in percent.
    private const int AlikeLean = 88;

    /// <summary>Satin limbs in their order; the later part of a pair goes into the earlier one.</summary>
    public static IReadOnlyList<Limb> Joined(IReadOnlyList<Limb> limbs)
    {
        var joined = limbs.ToArray();
        var gone = new bool[limbs.Count];
        for (var one = 0; one < limbs.Count; one++)
        {
            for (var other = one + 1; other < limbs.Count; other++)
            {
                if (gone[one] || gone[other] || !AreOne(joined[one], joined[other]))
                    continue;
                joined[one] = Of(joined[one], joined[other]);
                gone[other] = true;
            }
        }

        return [.. joined.Where((_, index) => !gone[index]).Select((limb, index) => limb with { Index = index })];
    }

    private static bool AreOne(Limb one, Limb other)
    {
        var reach = Near / Fine.PerTenth;
        if (one.Chain == other.Chain || !IsLong(one) || !IsLong(other)
            || one.Box.Bottom > other.Box.Top + reach || other.Box.Bottom > one.Box.Top + reach
            || one.Box.Left > other.Box.Right + reach || other.Box.Left > one.Box.Right + reach)
            return false;
        var (less, more) = (Math.Min(one.Width, other.Width), Math.Max(one.Width, other.Width));
        return 100L * less >= Narrowest * (long)more && (Meet(one, other, more) || Meet(other, one, more));
    }

    private static bool IsLong(Limb limb) => 10 * Fine.Length(limb.DoubleAxis) >= 16L * limb.Width && limb.IsStraight;

    /// <summary>The upper one begins about where the lower one ends, and both lean alike.</summary>
    private static bool Meet(Limb lower, Limb upper, int width) =>
        Fine.Length(upper.DoubleLower - lower.DoubleUpper) <= 2 * Math.Max(Near, width)
        && LeanAlike(lower.DoubleAxis, upper.DoubleAxis)
        && LeanAlike(lower.DoubleAxis, upper.DoubleUpper - lower.DoubleLower);

    private static bool LeanAlike(TapePoint one, TapePoint other)
    {
        var dot = Fine.Dot(one, other);
        return dot > 0 && (Int128)100 * dot * dot >= (Int128)AlikeLean * Fine.Square(one) * Fine.Square(other);
    }

    private static Limb Of(Limb one, Limb other) => one with
    {
        Stitches = [.. one.Stitches.Concat(other.Stitches).OrderBy(interval => interval.First)],
        Hull = Hull.Of(one.Hull.Concat(other.Hull)),
        Box = one.Box.Union(other.Box),
        Center = one.Box.Union(other.Box).Center,
        DoubleLower = one.DoubleLower.Y <= other.DoubleLower.Y ? one.DoubleLower : other.DoubleLower,
        DoubleUpper = one.DoubleUpper.Y >= other.DoubleUpper.Y ? one.DoubleUpper : other.DoubleUpper,
        Width = (one.Width + other.Width) / 2,
    };
}
