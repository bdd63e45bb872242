using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Makes base lines of tall limbs beside each other.</summary>
internal sealed class SeedMaker
{
    /// <summary>Most seeds of one kind looked at; above, every second, third, ... of them.</summary>
    private const int Most = 1500;

    // How many limbs to the right of one are tried, and within how many heights.
    private const int Neighbors = 5;
    private const int NeighborsOnArc = 4;
    private const int Nearness = 3;

    // Letters are at most 60 mm high.
    private const int Tallest = 60 * Fine.PerMillimeter;

    // The lower of two letters has at least this share of the height of the taller one, percent: x-height and capitals.
    private const int LeastShare = 55;

    // Limbs of one line lean at most so far from each other: cosine above 0.77, squared in percent.
    private const int AlikeLean = 60;

    private readonly Limb[] _tall;
    private readonly int[][] _right;

    private SeedMaker(IReadOnlyList<Limb> limbs)
    {
        _tall = [.. limbs.Where(limb => limb.IsTall && limb.Height <= Tallest).OrderBy(limb => limb.Center.X).ThenBy(limb => limb.Index)];
        _right = [.. Enumerable.Range(0, _tall.Length).Select(ToTheRight)];
    }

    /// <summary>Straight lines first, in the order of their limbs.</summary>
    public static IReadOnlyList<Seed> Of(IReadOnlyList<Limb> limbs)
    {
        var maker = new SeedMaker(limbs);
        return [.. Sampled([.. maker.Straight()]), .. Sampled([.. maker.Round()])];
    }

    private static IEnumerable<Seed> Sampled(Seed[] seeds)
    {
        var step = (seeds.Length + Most - 1) / Most;
        return step <= 1 ? seeds : seeds.Where((_, index) => index % step == 0);
    }

    private int[] ToTheRight(int limb)
    {
        var near = new List<int>();
        var farthest = Nearness * _tall[limb].Height * 100 / LeastShare / Fine.PerTenth;
        for (var other = limb + 1; other < _tall.Length && _tall[other].Center.X - _tall[limb].Center.X <= farthest; other++)
        {
            if (IsNeighbor(_tall[limb], _tall[other]))
                near.Add(other);
        }

        return
        [
            .. near.OrderBy(other => Fine.Square(_tall[other].Center - _tall[limb].Center)).ThenBy(other => _tall[other].Index).Take(Neighbors),
        ];
    }

    private static bool IsNeighbor(Limb limb, Limb other)
    {
        var way = other.Center - limb.Center;
        var (less, more) = (Math.Min(limb.Height, other.Height), Math.Max(limb.Height, other.Height));
        return way.X > 0
            && (long)way.Y * way.Y <= 3L * way.X * way.X
            && 100 * less >= LeastShare * more
            && Fine.Length(way) <= Nearness * more
            && LeansAlike(limb.DoubleAxis, other.DoubleAxis);
    }

    private static bool LeansAlike(TapePoint one, TapePoint other)
    {
        var dot = Fine.Dot(one, other);
        return dot > 0 && (Int128)100 * dot * dot >= (Int128)AlikeLean * Fine.Square(one) * Fine.Square(other);
    }

    private IEnumerable<Seed> Straight()
    {
        for (var left = 0; left < _tall.Length; left++)
        {
            foreach (var right in _right[left])
            {
                if (StraightUnder(_tall[left], _tall[right]) is { } curve)
                    yield return new(curve, (int)Math.Max(_tall[left].Height, _tall[right].Height), _tall[left].Index);
            }
        }
    }

    private static StraightCurve? StraightUnder(Limb left, Limb right)
    {
        var curve = StraightCurve.Through(left.Center, right.Center);
        for (var again = 0; again < 2 && curve is not null; again++)
            curve = StraightCurve.Through(Foot(curve, left), Foot(curve, right));
        return curve is null || !Stand(curve, left, right) ? null : curve;
    }

    private IEnumerable<Seed> Round()
    {
        for (var left = 0; left < _tall.Length; left++)
        {
            foreach (var inner in _right[left].Take(NeighborsOnArc))
            {
                foreach (var right in _right[inner].Take(NeighborsOnArc))
                {
                    if (RoundUnder(_tall[left], _tall[inner], _tall[right]) is { } curve)
                        yield return new(curve, (int)Math.Max(_tall[left].Height, _tall[right].Height), _tall[left].Index);
                }
            }
        }
    }

    private static RoundCurve? RoundUnder(Limb left, Limb inner, Limb right)
    {
        Curve? chord = StraightCurve.Through(left.Center, right.Center);
        RoundCurve? round = null;
        for (var again = 0; again < 3 && chord is not null; again++)
        {
            round = RoundCurve.Through(Foot(chord, left), Foot(chord, inner), Foot(chord, right));
            chord = round;
        }

        return round is null || !Stand(round, left, inner, right) ? null : round;
    }

    private static TapePoint Foot(Curve curve, Limb limb) => curve.At(limb.Center).Lowest(limb.Hull);

    /// <summary>All of them lean less than about 35 degrees.</summary>
    private static bool Stand(Curve curve, params ReadOnlySpan<Limb> limbs)
    {
        foreach (var limb in limbs)
        {
            if (curve.At(limb.Center).LeanOf(limb.DoubleAxis) is not (>= -700 and <= 700))
                return false;
        }

        return true;
    }
}
